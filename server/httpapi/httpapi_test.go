package httpapi_test

import (
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
)

func TestErrorsHaveTheirStatusAndOneSentence(t *testing.T) {
	a := newApp(t)
	for _, c := range []struct {
		err    error
		status int
		says   string
	}{
		{quiz.ErrGap, 409, `"acked":41`},
		{quiz.ErrForked, 409, "two histories"},
		{quiz.ErrFull, 507, "disk is full"},
		{quiz.ErrBusy, 503, "busy"},
		{quiz.ErrClosed, 503, "stopping"},
		{quiz.ErrBroken, 503, "restart the server"},
		{fmt.Errorf("wrapped: %w", errors.Join(quiz.ErrBroken, errors.New("disk /dev/sda1 failed"))), 503, "restart the server"},
		{quiz.ErrUnknownDevice, 401, "do not match"},
		{errors.New("bucket root page 17 is torn"), 500, "failed at this request"},
	} {
		a.store.append = func(string, []quiz.Event) (uint64, error) { return 0, c.err }
		reply, body := a.ask("POST", "/api/v1/events", batch(t, 1), signedIn...)
		assert.Equal(t, c.status, reply.StatusCode, c.err)
		assert.Contains(t, body, c.says)
		assert.NotContains(t, body, "torn", "an internal error stays inside")
		assert.NotContains(t, body, "/dev/", "an internal error stays inside")
		assert.Equal(t, c.status == 503, reply.Header.Get("Retry-After") != "")
	}
	assert.Contains(t, a.log.String(), "torn", "the log has it")
}

func TestAPanicIsAnErrorLikeOthers(t *testing.T) {
	a := newApp(t)
	a.store.append = func(string, []quiz.Event) (uint64, error) { panic("a slip") }
	reply, body := a.ask("POST", "/api/v1/events", batch(t, 1), signedIn...)
	assert.Equal(t, 500, reply.StatusCode)
	assert.NotContains(t, body, "slip")
	assert.Contains(t, a.log.String(), "a slip")
}

func TestHealthAndReadiness(t *testing.T) {
	a := newApp(t)
	reply, _ := a.ask("GET", "/healthz", "")
	assert.Equal(t, 200, reply.StatusCode)
	reply, _ = a.ask("GET", "/readyz", "")
	assert.Equal(t, 200, reply.StatusCode)
	a.store.ready = func() error { return quiz.ErrBroken }
	reply, body := a.ask("GET", "/readyz", "")
	assert.Equal(t, 503, reply.StatusCode)
	assert.Contains(t, body, "restart the server")
	reply, _ = a.ask("GET", "/healthz", "")
	assert.Equal(t, 200, reply.StatusCode)
}

// The description names every path there is, and every status in the table.
func TestTheDescriptionIsComplete(t *testing.T) {
	text, err := os.ReadFile("README.md")
	require.NoError(t, err)
	paths := 0
	for _, route := range newApp(t).GetRoutes(true) {
		if strings.Contains(route.Path, "*") || !slices.Contains([]string{"GET", "POST", "PUT", "DELETE"}, route.Method) {
			continue
		}
		paths++
		assert.Contains(t, string(text), "`"+route.Method+" "+route.Path+"`")
	}
	assert.Equal(t, 51, paths)
	for _, status := range []string{"400", "401", "403", "404", "405", "409", "413", "415", "429", "431", "500", "503", "507"} {
		assert.Contains(t, string(text), status)
	}
}

// Every answer, whatever it is, carries the headers.
func TestSecurityHeaders(t *testing.T) {
	a := newApp(t)
	for _, c := range [][2]string{{"GET", "/"}, {"GET", "/api/v1/state"}, {"GET", "/nothing.txt"}, {"GET", "/healthz"}, {"DELETE", "/"}, {"GET", "/api/v1/live"}, {"BREW", "/"}} {
		reply, _ := a.ask(c[0], c[1], "")
		csp := reply.Header.Get("Content-Security-Policy")
		assert.Contains(t, csp, "default-src 'none'", c)
		assert.Contains(t, csp, "script-src 'self' 'wasm-unsafe-eval';", c)
		assert.Contains(t, csp, "frame-ancestors 'none'", c)
		for _, loose := range []string{"'unsafe-inline'", "'unsafe-eval'", "*", "http:", "https:"} {
			assert.NotContains(t, csp, loose, c)
		}
		assert.Equal(t, "nosniff", reply.Header.Get("X-Content-Type-Options"), c)
		assert.Equal(t, "no-referrer", reply.Header.Get("Referrer-Policy"), c)
		assert.Equal(t, "same-origin", reply.Header.Get("Cross-Origin-Opener-Policy"), c)
		assert.Empty(t, reply.Header.Get("Access-Control-Allow-Origin"), "no other site may read")
		assert.Empty(t, reply.Header.Get("Server"), c)
		assert.Empty(t, reply.Header.Get("Set-Cookie"), c)
		assert.Empty(t, reply.Header.Get("Strict-Transport-Security"), "plain http")
	}
	reply, _ := a.ask("GET", "/api/v1/state", "", signedIn...)
	assert.Equal(t, "no-store", reply.Header.Get("Cache-Control"))
}

func TestForeignSitesAreRefused(t *testing.T) {
	a := newApp(t)
	for _, headers := range [][]string{
		{"Origin", "https://elsewhere.example"}, {"Origin", "null"}, {"Origin", "https://lintel.example.elsewhere.example"},
		{"Origin", "https://lintel.example:8443"}, {"Origin", "::"}, {"Sec-Fetch-Site", "cross-site"}, {"Sec-Fetch-Site", "same-site"},
	} {
		for _, path := range []string{"/api/v1/state", "/api/v1/live"} {
			reply, body := a.ask("GET", path, "", append(headers, signedIn...)...)
			assert.Equal(t, 403, reply.StatusCode, headers)
			assert.Contains(t, body, "another site")
		}
		reply, _ := a.ask("POST", "/api/v1/events", batch(t, 1), append(headers, signedIn...)...)
		assert.Equal(t, 403, reply.StatusCode, headers)
	}
	for _, origin := range []string{"https://lintel.example", "http://lintel.example", "http://LINTEL.example"} {
		reply, _ := a.ask("GET", "/api/v1/state", "", append([]string{"Origin", origin, "Sec-Fetch-Site", "same-origin"}, signedIn...)...)
		assert.Equal(t, 200, reply.StatusCode, origin)
	}
}

// The limit is a device's own: all of a class comes from one address.
func TestOneDeviceCannotUseUpAnothersRate(t *testing.T) {
	a := newApp(t)
	other := []string{"Authorization", "Device " + strings.Repeat("d", 32) + ":" + secret}
	limited := 0
	for range 150 {
		reply, _ := a.ask("GET", "/api/v1/state", "", signedIn...)
		if reply.StatusCode == 429 {
			limited++
			assert.NotEmpty(t, reply.Header.Get("Retry-After"))
		}
	}
	assert.Equal(t, 50, limited, "a burst of 100, then the rate")
	reply, _ := a.ask("GET", "/api/v1/state", "", other...)
	assert.Equal(t, 200, reply.StatusCode)

	a.now = a.now.Add(2 * time.Second)
	passed := 0
	for range 40 {
		if reply, _ := a.ask("GET", "/api/v1/state", "", signedIn...); reply.StatusCode == 200 {
			passed++
		}
	}
	assert.Equal(t, 20, passed, "ten a second come back")
}

// Working out a fire again costs the server more than sending an answer costs a
// device.
func TestADeviceCannotFloodWithAnswers(t *testing.T) {
	a := newApp(t)
	full := batch(t, quiz.MaxBatch)
	stored := 0
	for range 70 {
		if reply, _ := a.ask("POST", "/api/v1/events", full, signedIn...); reply.StatusCode == 200 {
			stored++
		}
	}
	assert.Equal(t, 50, stored, "5,000 at once")
	a.now = a.now.Add(100 * time.Second)
	reply, _ := a.ask("POST", "/api/v1/events", full, signedIn...)
	assert.Equal(t, 200, reply.StatusCode, "and one a second after that")
}

// A wrong secret must not use up the rate of the device that it names.
func TestAStrangerCannotLockADeviceOut(t *testing.T) {
	a := newApp(t)
	for range 300 {
		reply, _ := a.ask("GET", "/api/v1/state", "", "Authorization", "Device "+device+":"+strings.Repeat("0", 64))
		require.Equal(t, 401, reply.StatusCode)
		require.Equal(t, "Device", reply.Header.Get("WWW-Authenticate"))
	}
	reply, _ := a.ask("GET", "/api/v1/state", "", signedIn...)
	assert.Equal(t, 200, reply.StatusCode)
}

func TestRegistrationIsLimitedForAll(t *testing.T) {
	a := newApp(t)
	register := func(n int) int {
		reply, _ := a.ask("POST", "/api/v1/devices", fmt.Sprintf(`{"v":1,"device":"%032x","secret":"%s","call_sign":"Truck 2"}`, n, secret))
		return reply.StatusCode
	}
	accepted := 0
	for n := range 2100 {
		if register(n) == 201 {
			accepted++
		}
	}
	assert.Equal(t, 2000, accepted)
	a.now = a.now.Add(time.Second)
	assert.Equal(t, 201, register(5000))
}

func TestCallSigns(t *testing.T) {
	a := newApp(t)
	for sign, status := range map[string]int{
		"Engine 7": 201, "Máquina 3": 201, "第三小隊": 201, strings.Repeat("x", 32): 201,
		"": 400, "   ": 400, strings.Repeat("x", 33): 400, "a\\u0000b": 400, "a\\nb": 400, "a\\u202eb": 400, "a\\u200bb": 400,
	} {
		reply, body := a.ask("POST", "/api/v1/devices", `{"v":1,"device":"`+device+`","secret":"`+secret+`","call_sign":"`+sign+`"}`)
		assert.Equal(t, status, reply.StatusCode, "%q %s", sign, body)
	}
}

// The log tells what happened and never a secret, a body or a call sign.
func TestTheLogHoldsNoSecret(t *testing.T) {
	a := newApp(t)
	a.ask("POST", "/api/v1/devices", `{"v":1,"device":"`+device+`","secret":"`+secret+`","call_sign":"Sign Of Mine"}`)
	a.ask("POST", "/api/v1/events", batch(t, 1), signedIn...)
	a.ask("GET", "/api/v1/state?secret="+secret, "", signedIn...)
	a.ask("GET", "/api/v1/state", "", "Authorization", "Device "+device+":"+strings.Repeat("e", 64))
	a.ask("GET", "/"+strings.Repeat("long", 200)+".txt", "")
	log := a.log.String()
	assert.Contains(t, log, `"path":"/api/v1/events"`)
	assert.Contains(t, log, `"status":401`)
	assert.NotContains(t, log, secret)
	assert.NotContains(t, log, strings.Repeat("e", 64))
	assert.NotContains(t, log, "Sign Of Mine")
	assert.NotContains(t, log, strings.Repeat("long", 100), "a stranger cannot fill the log with one path")
}
