package wording_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/engine/sim"
	"lintel/engine/sim/gauge"
)

// Every kind of event and every cause has a sentence in both languages; one that has
// none would stand on the page as its key.
func TestEveryKindAndCauseOfEventsHasWords(t *testing.T) {
	spanish := wording.In("es")
	for _, id := range ids() {
		assert.NotEqual(t, id, wording.Say(id))
		assert.NotEqual(t, id, spanish(id))
	}
	assert.Equal(t, "event/nobody", wording.Say("event/nobody"), "a key without words is seen")
	assert.Equal(t, "cause/nobody|s=1", spanish("cause/nobody|s=1"))
}

func ids() []string {
	list := append([]string{}, sim.Causes...)
	for _, kind := range sim.Kinds {
		list = append(list, "event/"+kind)
	}
	return list
}

var idOf = regexp.MustCompile(`(?m)^cause/[a-z_/]+`)

// Whatever happens in random houses is told with sentences of the list, all of their
// slots filled, in both languages.
func TestWhatHappensInRandomHousesIsSaid(t *testing.T) {
	spanish, told := wording.In("es"), map[string]bool{}
	for seed := range uint64(40) {
		run, err := sim.New(gauge.RandomHouse(1000+seed), content.Library())
		require.NoError(t, err)
		require.NoError(t, run.Advance(150))
		for _, event := range run.Events() {
			assert.Contains(t, sim.Kinds, event.Kind)
			for _, id := range idOf.FindAllString(event.Cause, -1) {
				assert.Contains(t, sim.Causes, id)
				told[id] = true
			}
			assert.NotRegexp(t, unsaid, wording.Say(event.Cause))
			assert.NotRegexp(t, unsaid, spanish(event.Cause))
		}
	}
	assert.Greater(t, len(told), 5, told)
	assert.Regexp(t, unsaid, wording.Say("cause/oxygen/lower|t=1"), "an empty slot is seen")
}

func TestEventsAreSaidInPlace(t *testing.T) {
	events := []engine.Event{{TS: 3, Kind: sim.Regrowth, Where: "room", Cause: engine.Sentences("cause/was_short_of_air", "cause/hot_layer|t=@degrees/552|flux=21")}}
	wording.Events(events)
	assert.Equal(t, engine.Event{TS: 3, Kind: sim.Regrowth, Where: "room", Cause: "The fire had been short of air. Upper layer 552 °C, 21 kW/m² at the floor."}, events[0])
}
