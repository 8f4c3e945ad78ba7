package serve_test

import (
	"encoding/json"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/store/storetest"
)

const phrase = "four words of my own"

// boss is a browser in which an instructor is signed in.
type boss struct {
	*server
	cookies []string
}

// take keeps the cookies that a reply sets.
func (b *boss) take(got reply) {
	for _, line := range got.header.Values("Set-Cookie") {
		name, _, _ := strings.Cut(line, "=")
		kept := []string{strings.Split(line, ";")[0]}
		for _, old := range b.cookies {
			if !strings.HasPrefix(old, name+"=") {
				kept = append(kept, old)
			}
		}
		b.cookies = kept
	}
}

func (b *boss) call(method, path string, body any) reply {
	b.t.Helper()
	headers := []string{"Cookie", strings.Join(b.cookies, "; "), "Origin", b.url}
	var got reply
	if body == nil {
		got = b.do(method, "/api/v1"+path, nil, headers...)
	} else {
		text, err := json.Marshal(body)
		require.NoError(b.t, err)
		got = b.do(method, "/api/v1"+path, strings.NewReader(string(text)), headers...)
	}
	b.take(got)
	return got
}

// must is call for what has to succeed; the answer is read into into.
func (b *boss) must(method, path string, body, into any) {
	b.t.Helper()
	got := b.call(method, path, body)
	require.Less(b.t, got.status, 300, got.text)
	if into != nil {
		require.NoError(b.t, json.Unmarshal([]byte(got.text), into), got.text)
	}
}

// chief sets a server up and signs its first chief in.
func (s *server) chief() *boss {
	s.t.Helper()
	code, err := s.SetUpCode()
	require.NoError(s.t, err)
	b := &boss{server: s}
	got := b.call("POST", "/setup", map[string]any{"v": 1, "code": strings.ToLower(code), "call_sign": "Chief 1", "pass_phrase": phrase})
	require.Equal(s.t, 201, got.status, got.text)
	return b
}

func TestTheFirstChiefIsMadeOnce(t *testing.T) {
	s := start(t)
	var door struct {
		SetUp     bool `json:"set_up"`
		MaySignIn bool `json:"may_sign_in"`
		Addresses []string
	}
	b := &boss{server: s}
	b.must("GET", "/door", nil, &door)
	assert.False(t, door.SetUp)
	assert.True(t, door.MaySignIn)
	assert.Equal(t, []string{s.url}, door.Addresses)

	wrong := map[string]any{"v": 1, "code": "AAAA-AAAA-AAAA-AAAA", "call_sign": "Chief 1", "pass_phrase": phrase}
	assert.Equal(t, 403, b.call("POST", "/setup", wrong).status)
	code, err := s.SetUpCode()
	require.NoError(t, err)
	short := map[string]any{"v": 1, "code": code, "call_sign": "Chief 1", "pass_phrase": "too short"}
	got := b.call("POST", "/setup", short)
	assert.Equal(t, 400, got.status)
	assert.Contains(t, got.sentence(t), "pass_phrase has 9 characters: choose 15 to 128")

	b = s.chief()
	cookie := strings.Join(b.cookies, ";")
	assert.Contains(t, cookie, "lintel=")
	got = b.call("POST", "/signin", map[string]any{"v": 1, "call_sign": "chief 1", "pass_phrase": phrase})
	require.Equal(t, 200, got.status, got.text)
	for _, line := range got.header.Values("Set-Cookie") {
		assert.Contains(t, line, "HttpOnly")
		assert.Contains(t, line, "SameSite=Strict")
		assert.NotContains(t, line, "secure", "over plain http on the own machine")
	}
	late := map[string]any{"v": 1, "code": code, "call_sign": "Chief 2", "pass_phrase": phrase}
	assert.Equal(t, 409, b.call("POST", "/setup", late).status, "there is a chief")
	var me struct {
		CallSign string `json:"call_sign"`
		Role     string
	}
	b.must("GET", "/me", nil, &me)
	assert.Equal(t, "Chief 1", me.CallSign)
	assert.Equal(t, "chief", me.Role)
}

// No pass phrase and no sign-in crosses a line that others may read.
func TestPlainHTTPIsForTheOwnMachine(t *testing.T) {
	s := start(t)
	b := s.chief()
	cookie := strings.Join(b.cookies, "; ")
	from := func(method, path, body string, headers ...string) reply {
		return s.do(method, "/api/v1"+path, strings.NewReader(body), append(headers, "Cookie", cookie)...)
	}
	signIn := `{"v":1,"call_sign":"Chief 1","pass_phrase":"` + phrase + `"}`
	for name, headers := range map[string][]string{
		"another name":                           {"Host", "lintel.example"},
		"another address":                        {"Host", "192.168.1.5:8080"},
		"through a proxy":                        {"X-Forwarded-For", "10.0.0.7"},
		"a proxy that lies":                      {"X-Forwarded-Proto", "https"},
		"behind an empty header of a stranger's": {"X-Forwarded-For", ""},
		"a proxy that says whose it is":          {"X-Real-IP", "10.0.0.7"},
	} {
		t.Run(name, func(t *testing.T) {
			for _, path := range []string{"/signin", "/setup", "/reset", "/signout", "/phrase", "/rosters", "/classes"} {
				got := from("POST", path, signIn, headers...)
				assert.Equal(t, 403, got.status, "%s %s", path, got.text)
				assert.Contains(t, got.sentence(t), "this connection is not private")
			}
			assert.Equal(t, 403, from("GET", "/me", "", headers...).status)
			got := from("GET", "/door", "", headers...)
			assert.Contains(t, got.text, `"may_sign_in":false`)
			assert.Contains(t, got.text, "by https")
		})
	}
	assert.Equal(t, 200, from("POST", "/signin", signIn).status)
}

func TestInvitingResettingAndShuttingOut(t *testing.T) {
	s := start(t)
	chief := s.chief()
	var invited struct{ Code string }
	chief.must("POST", "/instructors/invite", map[string]any{"v": 1, "role": "instructor"}, &invited)
	second := &boss{server: s}
	accept := map[string]any{"v": 1, "code": invited.Code, "call_sign": "Instructor 2", "pass_phrase": phrase + " too"}
	taken := map[string]any{"v": 1, "code": invited.Code, "call_sign": "CHIEF  1", "pass_phrase": phrase}
	assert.Equal(t, 409, second.call("POST", "/reset", taken).status, "a call sign is one person's")
	second.must("POST", "/reset", accept, nil)
	accept["call_sign"] = "Instructor 3"
	assert.Equal(t, 403, (&boss{server: s}).call("POST", "/reset", accept).status, "an invitation is for once")
	assert.Equal(t, 403, second.call("POST", "/instructors/invite", map[string]any{"v": 1, "role": "chief"}).status, "not a chief")
	assert.Equal(t, 403, second.call("GET", "/audit", nil).status)

	code, _, err := s.desk().ConsoleReset("instructor 2")
	require.NoError(t, err)
	fresh := &boss{server: s}
	fresh.must("POST", "/reset", map[string]any{"v": 1, "code": code, "pass_phrase": "another phrase of mine"}, nil)
	assert.Equal(t, 401, second.call("GET", "/me", nil).status, "every other sign-in has ended")
	assert.Equal(t, 200, fresh.call("GET", "/me", nil).status)
	assert.Equal(t, 401, second.call("POST", "/signin", map[string]any{"v": 1, "call_sign": "Instructor 2", "pass_phrase": phrase + " too"}).status)

	var all struct{ Instructors []quiz.Instructor }
	chief.must("GET", "/instructors", nil, &all)
	require.Len(t, all.Instructors, 2)
	for _, i := range all.Instructors {
		out := map[string]any{"v": 1, "role": "instructor", "shut_out": true}
		got := chief.call("PUT", "/instructors/"+i.ID, out)
		if i.Role == quiz.RoleChief {
			assert.Equal(t, 409, got.status, "never the last chief")
		} else {
			assert.Equal(t, 200, got.status, got.text)
		}
	}
	assert.Equal(t, 401, fresh.call("GET", "/me", nil).status, "shut out")
	assert.Equal(t, 401, fresh.call("POST", "/signin", map[string]any{"v": 1, "call_sign": "Instructor 2", "pass_phrase": "another phrase of mine"}).status)

	var audit struct{ Deeds []quiz.Deed }
	chief.must("GET", "/audit", nil, &audit)
	var did []string
	for _, d := range audit.Deeds {
		did = append([]string{d.Did}, did...)
	}
	assert.Equal(t, []string{"set_up", "invite", "accept", "reset", "new_phrase", "instructor"}, did)
}

// Strangers who try pass phrases use up their own tries and nobody else's.
func TestStrangersCannotLockAnInstructorOut(t *testing.T) {
	s := startWith(t, t.TempDir(), func(c *configuration) { c.BehindHTTPS = true })
	owner := s.chief()
	wrong := `{"v":1,"call_sign":"Chief 1","pass_phrase":"a guess of a stranger"}`
	right := `{"v":1,"call_sign":"Chief 1","pass_phrase":"` + phrase + `"}`
	proxied := []string{"X-Forwarded-Proto", "https", "Host", "lintel.example"}
	owner.take(s.do("POST", "/api/v1/signin", strings.NewReader(right), proxied...)) // by https: a cookie of its own
	refused := 0
	for range 14 {
		got := s.do("POST", "/api/v1/signin", strings.NewReader(wrong), proxied...)
		if got.status == 429 {
			refused++
		} else {
			assert.Equal(t, 401, got.status)
		}
	}
	assert.Positive(t, refused, "strangers are slowed down")
	assert.Equal(t, 429, s.do("POST", "/api/v1/signin", strings.NewReader(right), proxied...).status, "from a browser nobody knows")
	known := append([]string{"Cookie", strings.Join(owner.cookies, "; ")}, proxied...)
	got := s.do("POST", "/api/v1/signin", strings.NewReader(right), known...)
	assert.Equal(t, 200, got.status, "a browser that was signed in before has its own tries")
	for _, line := range got.header.Values("Set-Cookie") {
		assert.Contains(t, line, "secure", "behind https")
	}
	assert.Equal(t, 200, s.do("POST", "/api/v1/signin", strings.NewReader(right)).status, "and so has the server's own machine")
	code, _, err := s.desk().ConsoleReset("Chief 1")
	require.NoError(t, err)
	reset := `{"v":1,"code":"` + code + `","pass_phrase":"another phrase of mine"}`
	assert.Equal(t, 200, s.do("POST", "/api/v1/reset", strings.NewReader(reset), proxied...).status, "and so has a code from the console")
}

func TestWrongCallSignAndWrongPhraseReadTheSame(t *testing.T) {
	s := start(t)
	b := s.chief()
	times := map[string]time.Duration{}
	var said []string
	for _, sign := range []string{"Chief 1", "Nobody"} {
		began := time.Now()
		got := b.call("POST", "/signin", map[string]any{"v": 1, "call_sign": sign, "pass_phrase": "not the right phrase"})
		times[sign] = time.Since(began)
		assert.Equal(t, 401, got.status)
		said = append(said, got.text)
	}
	assert.Equal(t, said[0], said[1])
	assert.Less(t, times["Chief 1"], 20*times["Nobody"], "both are worked out")
}

func TestRostersAreKeptAndClaimed(t *testing.T) {
	s := start(t)
	b := s.chief()
	for csv, says := range map[string]string{
		"name,number\nA,1\n":                            "line 1 is not the head: begin with call_sign,personnel",
		"call_sign,personnel\n":                         "line 2 is missing",
		"call_sign,personnel\nEngine 1,7\n engine  1,8": "line 3 has the call sign of line 2 again",
		"call_sign,personnel\nEngine 1,7\nEngine 2,7":   "line 3 has the number of line 2 again",
		"call_sign,personnel\nEngine 1,7,x":             "line 2 has 3 values",
		"call_sign,personnel\nEngine 1,\"7\n":           "quotation mark",
		"call_sign,personnel\nEngine 1,=1+1":            "line 2 has a personnel number with other than",
		"call_sign,personnel\n,7":                       "line 2 has no call sign",
	} {
		got := b.call("POST", "/rosters", map[string]any{"v": 1, "title": "B shift", "csv": csv})
		assert.Equal(t, 400, got.status, csv)
		assert.Contains(t, got.sentence(t), says)
	}
	var made struct{ Roster quiz.Roster }
	b.must("POST", "/rosters", map[string]any{"v": 1, "title": "B shift", "csv": "\ufeffcall_sign,personnel\r\nEngine 1,A-17\r\nEngine 2,\r\n"}, &made)
	require.Len(t, made.Roster.Seats, 2)
	assert.True(t, made.Roster.Seats[0].Numbered)
	got := b.call("GET", "/rosters", nil)
	assert.NotContains(t, got.text, "A-17", "the number stays on the server")
	got = b.call("GET", "/rosters/"+made.Roster.ID+"/export.csv", nil)
	assert.Equal(t, "call_sign,personnel\r\nEngine 1,A-17\r\nEngine 2,\r\n", got.text)
	assert.Contains(t, got.header.Get("Content-Disposition"), "attachment")

	seat := made.Roster.Seats[0].ID
	keep := []map[string]any{{"id": seat, "call_sign": "Engine 1 Bravo"}, {"call_sign": "Truck 4", "personnel": "9"}}
	b.must("PUT", "/rosters/"+made.Roster.ID, map[string]any{"v": 1, "title": "B shift", "seats": keep}, &made)
	assert.Equal(t, "Engine 1 Bravo", made.Roster.Seats[0].CallSign)
	assert.True(t, made.Roster.Seats[0].Numbered, "the number was kept")

	// Device 1 works, claims the seat, works on; then the person changes phones.
	claim := func(n int) reply {
		var code struct{ Token string }
		b.must("POST", "/rosters/"+made.Roster.ID+"/seats/"+seat+"/claim", map[string]any{"v": 1}, &code)
		got := s.post("/api/v1/claim", map[string]any{"v": 1, "token": code.Token, "place": "a"}, as(n)...)
		again := s.post("/api/v1/claim", map[string]any{"v": 1, "token": code.Token, "place": "a"}, as(3)...)
		assert.Equal(t, 403, again.status, "a code is for once")
		return got
	}
	for n := 1; n <= 3; n++ {
		s.register(n)
		require.Equal(t, 200, s.send(n, storetest.Answers(n, 1, 2)).status)
	}
	got = claim(1)
	require.Equal(t, 200, got.status, got.text)
	assert.Contains(t, got.text, `"call_sign":"Engine 1 Bravo"`)
	require.Equal(t, 200, s.send(1, storetest.Answers(1, 3, 3)).status)
	require.Equal(t, 200, claim(2).status)
	require.Equal(t, 200, s.send(1, storetest.Answers(1, 4, 5)).status, "the old phone goes on for itself")
	require.Equal(t, 200, s.send(2, storetest.Answers(2, 3, 3)).status)

	whole := func(path string, ask func(path string) reply) (ids []string) {
		for after := ""; ; {
			var page struct {
				Records []quiz.Record
				Next    string
			}
			got := ask(path + "limit=2&after=" + after)
			require.Equal(t, 200, got.status, got.text)
			require.NoError(t, json.Unmarshal([]byte(got.text), &page))
			for _, r := range page.Records {
				ids = append(ids, r.ID)
			}
			if after = page.Next; after == "" {
				return ids
			}
		}
	}
	var want []string
	for _, e := range append(storetest.Answers(1, 1, 3), storetest.Answers(2, 1, 3)...) {
		want = append(want, e.ID)
	}
	assert.Equal(t, want, whole("/rosters/"+made.Roster.ID+"/seats/"+seat+"/records?", func(p string) reply { return b.call("GET", p, nil) }))
	assert.Equal(t, want, whole("/api/v1/seats/records?", func(p string) reply { return s.do("GET", p, nil, as(2)...) }), "the history goes along to the new phone")
	assert.Equal(t, http.StatusNotFound, s.do("GET", "/api/v1/seats/records", nil, as(1)...).status, "and has left the old one")
	assert.Contains(t, s.do("GET", "/api/v1/seats", nil, as(2)...).text, "Engine 1 Bravo")

	assert.Equal(t, 204, b.call("DELETE", "/rosters/"+made.Roster.ID, nil).status)
	assert.Equal(t, 404, b.call("DELETE", "/rosters/"+made.Roster.ID, nil).status)
}

func TestADeviceMovesToAnotherPhone(t *testing.T) {
	s := start(t)
	s.register(1)
	require.Equal(t, 200, s.send(1, storetest.Answers(1, 1, 3)).status)
	var code struct{ Token string }
	require.NoError(t, json.Unmarshal([]byte(s.post("/api/v1/devices/move", map[string]any{"v": 1}, as(1)...).text), &code))
	take := map[string]any{"v": 1, "token": code.Token, "secret": storetest.Secret(77)}
	got := s.post("/api/v1/devices/claim", take)
	require.Equal(t, 200, got.status, got.text)
	assert.Contains(t, got.text, `"device":"`+storetest.ID(1)+`"`)
	assert.Contains(t, got.text, `"acked":3`)
	assert.Equal(t, 403, s.post("/api/v1/devices/claim", take).status, "once")
	assert.Equal(t, 401, s.do("GET", "/api/v1/state", nil, as(1)...).status, "the old phone is signed out")
	fresh := []string{"Authorization", "Device " + storetest.ID(1) + ":" + storetest.Secret(77)}
	assert.Equal(t, 200, s.do("GET", "/api/v1/state", nil, fresh...).status)

	require.NoError(t, json.Unmarshal([]byte(s.post("/api/v1/devices/move", map[string]any{"v": 1}, fresh...).text), &code))
	s.wait(61 * time.Second)
	late := map[string]any{"v": 1, "token": code.Token, "secret": storetest.Secret(78)}
	assert.Equal(t, 403, s.post("/api/v1/devices/claim", late).status, "a minute is over")
}
