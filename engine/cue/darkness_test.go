package cue_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine/cue"
	"lintel/engine/internal/published"
	"lintel/engine/optics"
)

// The published smokes fall on the levels that the words give them: pyrolysis
// white, smouldering wood light, flaming wood middle, soot black.
func TestPublishedSmokesFallOnTheirLevels(t *testing.T) {
	_, s := scaleBook(t)
	albedo := map[string]float64{"pyrolysis": 0.965} // 0.95 to 0.98: derived from Pokhrel et al. 2016
	for _, row := range published.Read(t, "optics/albedo.csv").Rows {
		albedo[row.Name] = row.Float("expected")
	}
	for name, level := range map[string]int{"pyrolysis": 1, "smouldering wood": 2, "flaming wood": 3, "soot": 4} {
		p := door()
		p.Lightness = optics.Lightness(optics.Reflectance(albedo[name], 0.6))
		assert.Equal(t, level, cue.Rate(&p, &s, nil).Darkness, "%s at %.3f", name, 1-p.Lightness)
	}
}
