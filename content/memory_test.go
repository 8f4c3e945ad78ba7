package content_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/quiz"
)

// What is scored from memory is scored as it is anew, whichever scene came between,
// and takes no fire.
func TestMemoryScoresAsScoreDoes(t *testing.T) {
	var memory content.Memory
	for _, family := range []string{"one-door", "two-looks-at-a-door", "report-flashover"} {
		scene := quiz.Scene{Family: family, Seed: 21}
		made, err := memory.Item(scene)
		require.NoError(t, err)
		plain, err := content.Item(family, 21)
		require.NoError(t, err)
		assert.Equal(t, plain, made)
		_, err = memory.Item(quiz.Scene{Family: "one-door", Seed: 22})
		require.NoError(t, err)
		answer := answerTo(made, func(int, quiz.Ask) quiz.Reply { return quiz.Reply{Unsure: true} })
		began := time.Now()
		want, err := content.Score(answer)
		require.NoError(t, err)
		anew := time.Since(began)
		for range 2 {
			began = time.Now()
			got, err := memory.Score(answer)
			require.NoError(t, err)
			assert.Equal(t, want, got, family)
			assert.Less(t, time.Since(began), anew, "no fire burns for it")
		}
		old := answer
		old.Engine = "0.0.0"
		_, err = memory.Score(old)
		require.Error(t, err, "another version is refused all the same")
	}
}

// A scene of the same family and seed that contrasts something else is another, and
// what fell out of memory is made anew.
func TestMemoryTellsScenesApart(t *testing.T) {
	var memory content.Memory
	family := "pair-of-stages"
	first, err := memory.Item(quiz.Scene{Family: family, Seed: 3})
	require.NoError(t, err)
	other := quiz.Scene{Family: family, Seed: 3, Contrast: &quiz.Contrast{Stages: []engine.Stage{engine.Growth, engine.Decay}}}
	second, err := memory.Item(other)
	require.NoError(t, err)
	for _, made := range []quiz.Item{first, second} {
		answer := answerTo(made, func(int, quiz.Ask) quiz.Reply { return quiz.Reply{Pick: "first"} })
		want, err := content.Score(answer)
		require.NoError(t, err)
		got, err := memory.Score(answer)
		require.NoError(t, err)
		assert.Equal(t, want, got)
	}
}
