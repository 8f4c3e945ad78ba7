package httpapi_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/quiz"
)

// FuzzEventsBody sends any body at all as a batch. It is stored or refused in
// one sentence; it is never a fault of the server, and nothing is stored that
// does not hold together.
func FuzzEventsBody(f *testing.F) {
	f.Add(`{"v":1,"events":[]}`)
	f.Add(`{"v":1,"events":[{"v":1,"id":"` + strings.Repeat("c", 32) + `","device":"` + device + `","seq":1,"engine":"e","t_client":0,"kind":"note","body":{}}]}`)
	f.Add(`{"v":1,"events":[{"seq":1e400}]}`)
	f.Add(`{"v":1,"events":[{"seq":-1,"body":null}]}`)
	f.Add(`{"v":1,"events":` + strings.Repeat("[", 3000))
	f.Add("\xff\xfe{")
	f.Fuzz(func(t *testing.T, body string) {
		a := newApp(t)
		a.store.append = func(id string, events []quiz.Event) (uint64, error) {
			assert.NoError(t, quiz.ValidateBatch(id, events))
			return events[len(events)-1].Seq, nil
		}
		reply, text := a.ask("POST", "/api/v1/events", body, signedIn...)
		assert.Contains(t, []int{200, 400, 409}, reply.StatusCode, text)
		if reply.StatusCode != 200 {
			assert.Contains(t, text, `"what":"`)
		}
	})
}
