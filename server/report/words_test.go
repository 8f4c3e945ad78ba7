package report

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
)

// Every language has every word, and none of another's but the few that are alike.
func TestEveryWordStandsInEveryLanguage(t *testing.T) {
	english := reflect.ValueOf(*ofLanguage["en"])
	require.Len(t, ofLanguage, len(Languages))
	for _, language := range Languages {
		require.Contains(t, ofLanguage, language)
		own := reflect.ValueOf(*ofLanguage[language])
		for i := range own.NumField() {
			name := own.Type().Field(i).Name
			assert.NotEmpty(t, own.Field(i).String(), "%s in %s", name, language)
			if language != "en" {
				assert.NotEqual(t, english.Field(i).String(), own.Field(i).String(), "%s in %s", name, language)
			}
		}
	}
}

func TestALanguageThatThereIsNotIsEnglish(t *testing.T) {
	paper := speak("tlh", func(key string) string { return key })
	assert.Equal(t, "Class report", paper.report)
}

// A value is named by what was asked, never by its number alone.
func TestValuesAreNamed(t *testing.T) {
	paper := speak("es", func(key string) string { return "<" + key + ">" })
	assert.Equal(t, "<scale/density/3>", paper.value(&quiz.Ask{Kind: quiz.AskLevel, Cue: "density"}, "3"))
	assert.Equal(t, "<stage/growth>", paper.value(&quiz.Ask{Kind: quiz.AskStage}, "growth"))
	assert.Equal(t, "<opening/front_door>", paper.value(&quiz.Ask{Kind: quiz.AskOpening}, "front_door"))
	assert.Equal(t, "0.40", paper.value(&quiz.Ask{Kind: quiz.AskPlane}, "0.40"))
	assert.Equal(t, "no se puede decir", paper.value(&quiz.Ask{Kind: quiz.AskFlow}, ""))
	assert.Equal(t, "Plano neutro", paper.cue("neutral_plane"))
	assert.Equal(t, "<scale/volume>", paper.cue("volume"))
}
