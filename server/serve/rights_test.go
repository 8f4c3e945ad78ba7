package serve_test

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz/session"
)

// openToAll is what answers without a sign-in: it takes a secret, a token or a code
// in the body or the first frame, or says nothing of anybody.
const openToAll = ` /healthz /readyz /api/v1/door /api/v1/devices /api/v1/devices/claim /api/v1/join /api/v1/lead
 /api/v1/setup /api/v1/signin /api/v1/reset /api/v1/signout /api/v1/live /api/v1/classes/:id/live `

// ofADevice is what a trainee's phone may call with its own secret.
const ofADevice = ` /api/v1/devices /api/v1/devices/move /api/v1/events /api/v1/records /api/v1/state
 /api/v1/claim /api/v1/seats /api/v1/seats/records `

// Every path of the API is closed to strangers, and every path of an instructor to a
// trainee who sits in the class, knows all its ids and calls from the server's own
// machine: but those that stand above. The paths are those of the description, which
// a test of httpapi holds complete.
func TestWhoMayCallWhat(t *testing.T) {
	text, err := os.ReadFile("../httpapi/README.md")
	require.NoError(t, err)
	s := start(t)
	l := s.chief().opened(session.Led, 1)
	require.Equal(t, 200, l.join(1, "Engine 1").status)
	fill := strings.NewReplacer(":id", l.ID, ":person", "1", ":scene", "s1", ":seat", l.ID, ":lead", l.ID)
	closed := 0
	for _, found := range regexp.MustCompile("`(GET|POST|PUT|DELETE) (/[^`]*)`").FindAllStringSubmatch(string(text), -1) {
		method, path := found[1], found[2]
		strangers := strings.Contains(openToAll, " "+path+" ") || strings.Contains(openToAll, " "+path+"\n")
		trainees := strings.Contains(ofADevice, " "+path+" ") || strings.Contains(ofADevice, " "+path+"\n")
		if !strangers || method == "DELETE" {
			assert.Equal(t, 401, s.do(method, fill.Replace(path), strings.NewReader("{}")).status, "a stranger: %s %s", method, path)
			closed++
		}
		if !strangers && !trainees {
			assert.Equal(t, 401, s.do(method, fill.Replace(path), strings.NewReader("{}"), as(1)...).status, "a trainee: %s %s", method, path)
		}
	}
	assert.Equal(t, 38, closed)
	assert.Equal(t, 200, l.call("GET", "/classes/"+l.ID, nil).status, "control: the instructor may")
}
