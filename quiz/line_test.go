package quiz_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/quiz"
)

func TestACallSignIsDrawnAsNoOther(t *testing.T) {
	for _, sign := range []string{
		"", " ", "\u00a0", "\u2003", "\u3164", "\u2800", "Engine\u00ad 1", "Engine\u034f 1", "Engine 1\ufe0f", "Engine 1\u3164", "\u061cEngine 1",
		"Engine\u180e 1", "Engine 1\U000e0041", "\ufff9a\ufffb", "a\u206a", "a\u200bb", "a\u202eb", "a\u2066b", "a\nb", "a\x00", "a\u0085", "\xff",
		"e\u0301\u0302\u0303", "Engine 1" + strings.Repeat("\u0336", 20), strings.Repeat("a", 33),
	} {
		assert.False(t, quiz.IsCallSign(sign), "%q", sign)
	}
	for _, sign := range []string{"Engine 1", "ñandú", "n\u0303andu\u0301", "Vie\u0302\u0323t", "消防 1", "Пожар", "🚒 7", "شاحنة", "गाड़ी", "a\u00a0b", strings.Repeat("é", 32)} {
		assert.True(t, quiz.IsCallSign(sign), "%q", sign)
	}
	assert.True(t, quiz.IsTitle(strings.Repeat("a", 80)))
	assert.False(t, quiz.IsTitle(strings.Repeat("a", 81)))
}

func TestANoteIsWords(t *testing.T) {
	for _, note := range []string{"", "Seen from the side.\nAsk again ⚠\ufe0f 👩\u200d🚒", strings.Repeat("é", 400)} {
		assert.True(t, quiz.IsNote(note, 400), "%q", note)
	}
	for _, note := range []string{"a\x00", "a\x1b[31m", "a\u202eb", "a\u2067b", "\xff", strings.Repeat("a", 401)} {
		assert.False(t, quiz.IsNote(note, 400), "%q", note)
	}
}
