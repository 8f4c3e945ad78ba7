// Package report puts a class's report on paper: as a table for a spreadsheet and
// as a PDF. What it says follows from session.Report alone.
package report

import (
	"strconv"
	"strings"
	"time"

	"lintel/quiz"
	"lintel/quiz/session"
)

// Says puts a key of the content's sentences into words.
type Says func(key string) string

// truthOf spells every right reply to an ask.
func truthOf(truth []quiz.Reply) string {
	var values []string
	for i := range truth {
		values = append(values, plainWord(session.Value(&truth[i])))
	}
	return strings.Join(values, wordOr)
}

// plainWord is a value of the engine as a person reads it.
func plainWord(value string) string {
	if value == "" {
		return wordUnsure
	}
	return strings.ReplaceAll(value, "_", " ")
}

func clock(ms int64) string {
	return time.UnixMilli(ms).UTC().Format("2006-01-02 15:04 UTC")
}

func percent(part, whole int) string {
	if whole == 0 {
		return ""
	}
	return strconv.Itoa((100*part+whole/2)/whole) + " %"
}

// wayWord says in which direction a cue was missed.
func wayWord(way session.Way) string {
	switch way {
	case session.TooHeavy:
		return wordTooHeavy
	case session.TooLight:
		return wordTooLight
	}
	return wordMixed
}

// steps is a mean of signed steps with its sign.
func steps(mean *float64) string {
	if mean == nil {
		return ""
	}
	return strings.TrimSuffix(strconv.FormatFloat(*mean, 'f', 1, 64), ".0")
}
