package main

import (
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// rule says what the packages under tree must never depend on, even at a
// distance. A ban on one of our own trees holds for everything below it; a ban
// on any other package holds for that path alone. Do not change this table to
// mend a build: move the type instead.
type rule struct {
	tree   string
	banned []string
	why    string
}

// phone is what would swell the WebAssembly or break its determinism.
var phone = []string{"fmt", "encoding/json", "net", "net/http", "os/exec", "math/rand", "github.com/goccy/go-yaml"}

var rules = []rule{
	{"engine/...", []string{"lintel/quiz", "lintel/content", "lintel/server", "lintel/pwa"}, "the engine is the bottom"},
	{"quiz/...", []string{"lintel/content", "lintel/server", "lintel/pwa"}, "data comes in as arguments"},
	{"content", []string{"lintel/server", "lintel/pwa"}, "content is read by server and phone"},
	{"engine/...", phone, "it runs on the phone"},
	{"quiz/...", phone, "it runs on the phone"},
	{"content", phone, "it runs on the phone"},
	{"content", []string{"lintel/content/wording", "lintel/engine/shape"}, "words and reflection stay off the phone"},

	{"engine", []string{"lintel/engine/"}, "the vocabulary knows none of its users"},
	{"engine/optics", []string{"lintel/engine/zone"}, "optics takes values, not the fire's types"},
	{"engine/cue", []string{"lintel/engine/zone", "lintel/engine/optics", "lintel/engine/infer"}, "a cue is rated from plain numbers"},
	{"engine/infer", []string{"lintel/engine/zone", "lintel/engine/optics", "lintel/engine/cue", "lintel/engine/sim", "lintel/engine/truth"}, "a reader sees only what a firefighter sees"},
	{"engine/truth", []string{"lintel/engine/cue", "lintel/engine/infer", "lintel/engine/optics"}, "the truth never looks at a cue"},
	{"engine/sim", []string{"lintel/engine/infer"}, "a fire does not read itself"},
	{"engine/zone", []string{"lintel/engine/optics", "lintel/engine/cue", "lintel/engine/truth"}, "the fire knows nothing of being seen"},

	{"server/store", []string{"lintel/server/live", "lintel/server/httpapi", "github.com/gofiber/fiber/v2", "github.com/gorilla/websocket"}, "adapters do not know each other"},
	{"server/live", []string{"lintel/server/store", "lintel/server/httpapi", "github.com/gofiber/fiber/v2"}, "adapters do not know each other"},
	{"quiz/session", []string{"lintel/quiz/item", "lintel/engine/sim", "time"}, "a class is a function of its log"},
	{"server/desk", []string{"lintel/server/store", "lintel/server/live", "lintel/server/httpapi", "lintel/server/class", "github.com/gofiber/fiber/v2"}, "it works through the store's interface"},
	{"server/class", []string{"lintel/server/store", "lintel/server/live", "lintel/server/httpapi", "lintel/content", "github.com/gofiber/fiber/v2", "github.com/gorilla/websocket"}, "a class knows no sockets; scenes come in as an argument"},
	{"server/report", []string{"lintel/server/store", "lintel/server/class", "lintel/server/httpapi"}, "a paper follows from the report alone"},
	{"server/httpapi", []string{"lintel/server/store", "lintel/server/live"}, "adapters do not know each other"},
	{"server/verdict", []string{"lintel/server/store", "lintel/server/live", "github.com/gofiber/fiber/v2"}, "it checks answers through the interface"},
	{"server/keep", []string{"lintel/server/live", "lintel/server/httpapi", "github.com/gofiber/fiber/v2"}, "keeping the store needs no web"},
	{"server/handover", []string{"lintel/server/store", "lintel/server/live", "lintel/server/httpapi", "lintel/quiz", "lintel/engine", "lintel/content"}, "it carries a connection and nothing else"},
}

// forTests are packages that only tests import; they read files.
var forTests = []string{"lintel/engine/internal/published", "lintel/engine/internal/num/numtest"}

func TestWhoMayImportWhom(t *testing.T) {
	for _, r := range rules {
		for pkg, deps := range dependencies(t, "lintel/"+r.tree) {
			if slices.Contains(forTests, pkg) {
				continue
			}
			for _, dep := range deps {
				for _, ban := range r.banned {
					assert.False(t, breaks(dep, ban), "%s must not depend on %s (found %s): %s", pkg, ban, dep, r.why)
				}
			}
		}
	}
}

// The table itself must bite.
func TestTheTableBites(t *testing.T) {
	assert.True(t, breaks("lintel/server/store", "lintel/server"))
	assert.True(t, breaks("lintel/engine/zone", "lintel/engine/"))
	assert.False(t, breaks("lintel/engine", "lintel/engine/"))
	assert.False(t, breaks("math/rand/v2", "math/rand"))
	assert.True(t, breaks("fmt", "fmt"))
	found := false
	for _, deps := range dependencies(t, "lintel/server") {
		for _, dep := range deps {
			found = found || breaks(dep, "fmt")
		}
	}
	assert.True(t, found, "the server does use fmt; a check that cannot see it sees nothing")
}

func breaks(dep, ban string) bool {
	if !strings.HasPrefix(ban, "lintel/") {
		return dep == ban
	}
	return dep == ban || strings.HasPrefix(dep, strings.TrimSuffix(ban, "/")+"/")
}

// dependencies asks the go command, so it must not be answered from the test
// cache: run with -count=1.
func dependencies(t *testing.T, pattern string) map[string][]string {
	t.Helper()
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}} {{join .Deps \" \"}}", pattern).Output()
	require.NoError(t, err, pattern)
	all := map[string][]string{}
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		words := strings.Fields(line)
		if len(words) > 0 {
			all[words[0]] = words[1:]
		}
	}
	return all
}
