package optics_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine/internal/published"
	"lintel/engine/optics"
)

// mix is a gram of smoke a cubic metre, share of it soot and the rest tar.
func mix(share float64) optics.Smoke {
	return optics.Smoke{Soot: 1e-3 * share, Tar: 1e-3 * (1 - share)}
}

func TestExtinctionAgainstPublishedSmokes(t *testing.T) {
	for _, row := range published.Read(t, "optics/extinction.csv").Rows {
		want := row.Float("expected")
		at := optics.At(mix(row.Float("soot_share")), row.Text("wavelength_nm"))
		got := at.Extinction
		if row.Text("what") == "absorption" {
			got = at.Absorption
		}
		assert.InDelta(t, want, got, row.Allowed(want), row.Name)
	}
	for _, row := range published.Read(t, "optics/carbon.csv").Rows {
		want := row.Float("expected")
		got := mix(row.Float("soot_share")).See().ExtinctionM
		assert.InDelta(t, want, got, row.Allowed(want), row.Name)
	}
}

func TestAlbedoAgainstPublishedSmokes(t *testing.T) {
	for _, row := range published.Read(t, "optics/albedo.csv").Rows {
		want := row.Float("expected")
		assert.InDelta(t, want, mix(row.Float("soot_share")).See().Albedo, row.Allowed(want), row.Name)
	}
}

func TestLightnessOfCommonReflectances(t *testing.T) {
	for _, row := range published.Read(t, "optics/lightness.csv").Rows {
		want := row.Float("expected")
		assert.InDelta(t, want, optics.Lightness(row.Float("reflectance")), row.Allowed(want), row.Name)
	}
}

// The grey ladder of the trade, dark to pale: plastics flaming, wood flaming,
// wood smouldering, pyrolysis alone, and steam whitest of all.
func TestGreyLadder(t *testing.T) {
	ladder := []optics.Smoke{mix(0.9), mix(0.158), mix(0.055), mix(0), {Water: 1e-3}}
	before := optics.Look{Lightness: -1}
	for _, smoke := range ladder {
		look := smoke.See()
		assert.Greater(t, look.Lightness, before.Lightness)
		before = look
	}
	assert.InDelta(t, 1, before.Lightness, 1e-9, "water absorbs nothing")
	assert.InDelta(t, 1, before.Steam, 1e-9)
}

// Brown carbon: tar alone is fully tinted, and soot hides it step by step.
func TestSootHidesTheTint(t *testing.T) {
	assert.InDelta(t, 1, mix(0).See().Tint, 1e-9)
	before := 1.1
	for twentieths := range 21 {
		tint := mix(float64(twentieths) / 20).See().Tint
		assert.Less(t, tint, before)
		before = tint
	}
	assert.InDelta(t, 0, before, 1e-9)
}

// Dilution leaves the hue alone: twice the gas halves extinction only.
func TestDilutionChangesExtinctionOnly(t *testing.T) {
	thick := optics.Smoke{Soot: 2e-3, Tar: 1e-3, Water: 5e-3}
	thin := optics.Smoke{Soot: 1e-3, Tar: 0.5e-3, Water: 2.5e-3}
	a, b := thick.See(), thin.See()
	assert.InEpsilon(t, a.ExtinctionM, 2*b.ExtinctionM, 1e-12)
	assert.InDelta(t, a.Lightness, b.Lightness, 1e-12)
	assert.InDelta(t, a.Tint, b.Tint, 1e-12)
	assert.InDelta(t, a.Steam, b.Steam, 1e-12)
}

func TestClearAirIsInvisible(t *testing.T) {
	look := optics.Smoke{}.See()
	assert.Zero(t, look.ExtinctionM)
	assert.InDelta(t, 1, optics.Transmitted(optics.Depth(look.ExtinctionM, optics.Path(2))), 1e-12)
}
