package fieldbook_test

import (
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content/fieldbook"
	"lintel/engine"
)

func TestScalesAreWhole(t *testing.T) {
	book := read[fieldbook.ScaleBook](t, "scales/scales.yaml")["scales"]
	_, err := book.CutPoints()
	require.NoError(t, err)
	for _, s := range book.Scales {
		require.Len(t, s.Levels, engine.TopLevel+1, s.Cue)
		for i, level := range s.Levels {
			assert.Equal(t, i, level.Level, s.Cue)
			assert.LessOrEqual(t, words(level.Name), 2, "%s: a name is a word or two", level.Name)
		}
		assert.Equal(t, engine.TopLevel, s.Base+len(s.Cuts), "%s: the cuts lead to the top level", s.Cue)
		assert.True(t, sort.SliceIsSorted(s.Cuts, func(i, j int) bool { return s.Cuts[i].At < s.Cuts[j].At }), s.Cue)
		for _, cut := range s.Cuts {
			assert.NotEmpty(t, cut.Because, s.Cue)
		}
	}
	for _, colour := range engine.Colours {
		found := false
		for _, hue := range book.Hues {
			found = found || hue.Colour == colour
		}
		assert.True(t, found, "no words for %s", colour)
	}
}

func TestCutPointsRefuseHoles(t *testing.T) {
	book := read[fieldbook.ScaleBook](t, "scales/scales.yaml")["scales"]
	for name, spoil := range map[string]func(*fieldbook.ScaleBook){
		"a cue missing":          func(b *fieldbook.ScaleBook) { b.Scales = b.Scales[1:] },
		"a cue twice":            func(b *fieldbook.ScaleBook) { b.Scales = append(b.Scales, b.Scales[0]) },
		"a threshold missing":    func(b *fieldbook.ScaleBook) { b.Thresholds = b.Thresholds[1:] },
		"an unknown threshold":   func(b *fieldbook.ScaleBook) { b.Thresholds[0].ID = "gloom" },
		"a nominal cue as scale": func(b *fieldbook.ScaleBook) { b.Scales[0].Cue = engine.CueFlow },
	} {
		spoiled := book
		spoiled.Scales = append([]fieldbook.ScaleWords(nil), book.Scales...)
		spoiled.Thresholds = append([]fieldbook.Threshold(nil), book.Thresholds...)
		spoil(&spoiled)
		_, err := spoiled.CutPoints()
		assert.Error(t, err, name)
	}
}
