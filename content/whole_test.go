package content_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/infer"
	"lintel/engine/sim"
)

// Every family's building is burned for a while and read off its own smoke: the
// reading is whole, each role is what the gas does, and the path begins and ends
// at openings to the outside.
func TestEveryFamilysBuildingCanBeRead(t *testing.T) {
	for _, family := range content.Families() {
		t.Run(family.ID, func(t *testing.T) {
			run, err := sim.New(family.Scene, content.Library())
			require.NoError(t, err)
			require.NoError(t, run.Advance(45))
			readings := run.Readings()
			finding := infer.Read(content.Rules(), readings)
			sum := 0.0
			for _, p := range finding.Stage {
				sum += p
			}
			assert.InDelta(t, 1, sum, 1e-9)
			flows := map[engine.Flow]engine.Role{
				engine.FlowIn: engine.RoleIn, engine.FlowOut: engine.RoleOut, engine.FlowBoth: engine.RoleBoth, engine.FlowNone: engine.RoleNone,
			}
			moving := false
			for _, o := range readings.Looks[0].Openings {
				assert.Equal(t, flows[o.Flow], finding.Openings[o.ID].Role, o.ID)
				moving = moving || o.Flow != engine.FlowNone
			}
			if !moving {
				return
			}
			require.NotEmpty(t, finding.Path)
			assert.Contains(t, finding.Openings, finding.Path[0])
			assert.Contains(t, finding.Openings, finding.Path[len(finding.Path)-1])
		})
	}
}
