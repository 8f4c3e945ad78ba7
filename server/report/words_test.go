package report

import (
	"reflect"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
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
	paper := speak(Reader{Language: "tlh", Says: func(key string) string { return key }})
	assert.Equal(t, "Class report", paper.report)
}

// A value is named by what was asked, never by its number alone.
func TestValuesAreNamed(t *testing.T) {
	paper := speak(Reader{Language: "es", Says: func(key string) string { return "<" + key + ">" }})
	assert.Equal(t, "<scale/density/3>", paper.value(&quiz.Ask{Kind: quiz.AskLevel, Cue: "density"}, "3"))
	assert.Equal(t, "<stage/growth>", paper.value(&quiz.Ask{Kind: quiz.AskStage}, "growth"))
	assert.Equal(t, "<opening/front_door>", paper.value(&quiz.Ask{Kind: quiz.AskOpening}, "front_door"))
	assert.Equal(t, "40\u00a0% de la altura", paper.value(&quiz.Ask{Kind: quiz.AskPlane}, "0.40"))
	assert.Equal(t, "no hay en la abertura: todo sale", paper.value(&quiz.Ask{Kind: quiz.AskPlane}, "0.00"))
	assert.Equal(t, "no hay en la abertura: entra aire por toda ella", paper.value(&quiz.Ask{Kind: quiz.AskPlane}, "1.00"))
	assert.Equal(t, "40\u00a0%", paper.place(&quiz.Ask{Kind: quiz.AskPlane}, "0.4"))
	assert.Equal(t, "más alto", paper.value(&quiz.Ask{Kind: quiz.AskChange, Cue: engine.CueNeutralPlane}, "more"))
	assert.Equal(t, "<change/more>", paper.value(&quiz.Ask{Kind: quiz.AskChange, Cue: engine.CueVolume}, "more"))
	watched := quiz.Ask{Kind: quiz.AskMoment, Watch: &quiz.Span{FromS: 60, ToS: 160}}
	assert.Equal(t, "45\u00a0s", paper.value(&watched, "105"), "since it began to run")
	assert.Equal(t, "empezó a verse a los 30\u00a0s, el suceso llegó a los 50\u00a0s", paper.truthOf(&watched, []quiz.Reply{{AtS: new(90.0), EventS: new(110.0)}}))
	assert.Equal(t, "no había nada de que avisar", paper.truthOf(&watched, []quiz.Reply{{Quiet: true}}))
	assert.Equal(t, "no se distingue", paper.value(&quiz.Ask{Kind: quiz.AskFlow}, ""))
	assert.Equal(t, "Plano neutro", paper.cue("neutral_plane"))
	assert.Equal(t, "<scale/volume>", paper.cue("volume"))
}

// A mean is written with the point of whoever reads it, and says which way it leans.
func TestMeansAreWrittenAsTheReaderDoes(t *testing.T) {
	for _, c := range []struct {
		language, point string
		mean            float64
		says            string
	}{
		{"es", "", -0.42, "0,4 niveles de menos en promedio"},
		{"es", ".", -0.42, "0.4 niveles de menos en promedio"},
		{"en", "", 1.04, "1 level too heavy on average"},
		{"en", ",", 2.5, "2,5 levels too heavy on average"},
		{"en", "", -0.04, ""},
	} {
		paper := speak(Reader{Language: c.language, Point: c.point})
		assert.Equal(t, c.says, paper.steps(&c.mean))
	}
}

// Times are told by the reader's clock, and say which that is.
func TestTimesSayTheirClock(t *testing.T) {
	const ms = 1_774_747_800_000 // 2026-03-29 01:30 UTC
	for east, says := range map[int]string{0: "2026-03-29 01:30 (UTC+00:00)", 120: "2026-03-29 03:30 (UTC+02:00)", -210: "2026-03-28 22:00 (UTC-03:30)"} {
		to := speak(Reader{Zone: time.FixedZone("", east*60)})
		assert.Equal(t, says, to.clock(ms))
	}
	nowhere := speak(Reader{})
	assert.Equal(t, "2026-03-29 01:30 (UTC+00:00)", nowhere.clock(ms))
}
