package sim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/sim"
)

// The darkness and the hue of smoke over all families of the drill: every outside
// opening with smoke, every ten seconds of three scenes of each. Every level and
// every hue of the trade is to be met, and no level three times out of four, or
// practice would teach that all smoke is alike (chosen by us). Printed with -v.
func TestSpreadOfColours(t *testing.T) {
	if testing.Short() {
		t.Skip("runs every family three times")
	}
	dark, hues, all := [engine.TopLevel + 1]int{}, map[engine.Colour]int{}, 0
	for _, family := range content.Families() {
		for seed := range uint64(3) {
			item, err := content.Item(family.ID, seed)
			require.NoError(t, err)
			run, err := sim.New(item.Scenario, library(t))
			require.NoError(t, err)
			for at := 10.0; at < item.Scenario.EndS; at += 10 {
				require.NoError(t, run.Advance(10))
				for i, o := range item.Scenario.Openings {
					if o.To != engine.Outside {
						continue
					}
					if r := run.Rating(i); r.Density > 0 {
						dark[r.Darkness]++
						hues[r.Colour]++
						all++
					}
				}
			}
		}
	}
	for level, count := range dark[1:] {
		share := float64(count) / float64(all)
		t.Logf("darkness %d: %.1f %%", level+1, 100*share)
		assert.Greater(t, share, 0.005, "darkness %d", level+1)
		assert.Less(t, share, 0.75, "darkness %d", level+1)
	}
	for _, hue := range engine.Colours {
		t.Logf("%s: %.1f %%", hue, 100*float64(hues[hue])/float64(all))
		assert.Positive(t, hues[hue], "%s", hue)
	}
}
