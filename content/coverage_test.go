package content_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/quiz"
)

// table counts which families cover what.
type table map[string]map[string]bool

func (c table) add(what, family string) {
	if c[what] == nil {
		c[what] = map[string]bool{}
	}
	c[what][family] = true
}

// misleads are the families about each thing that misleads, as the trade lists
// them.
var misleads = map[string][]string{
	"wind":                       {"wind-on-the-front", "wind-rises", "wind-nearest", "wind-and-one-look", "report-reversal"},
	"size of the opening":        {"half-a-door", "narrow-and-wide"},
	"size of the building":       {"large-hall", "large-hall-read", "pair-in-a-hall", "two-looks-at-a-hall"},
	"distance":                   {"far-window", "upstairs-read", "shut-off-room"},
	"height":                     {"fast-at-the-top"},
	"steam":                      {"water-on", "pale-after-water", "steam-or-smoke", "pair-around-water", "pair-before-and-after-water", "pair-starved-or-wetted"},
	"nothing showing":            {"incipient-or-hidden", "shut-room", "pair-faint-at-a-gap"},
	"mixed colours":              {"two-colours", "pair-of-shades"},
	"light or dark behind it":    {"against-the-light"},
	"an opening just moved":      {"two-looks-drawn-to", "door-pulled-to"},
	"less smoke without water":   {"two-looks-all-shut", "report-want-of-air"},
	"smoke that only looks calm": {"gap-smoke", "little-open-call"},
}

// Every kind, stage, regime, flow, misleader and kind of move has its families, and
// the families are at least forty.
func TestFamiliesCoverTheTrade(t *testing.T) {
	families := content.Families()
	assert.GreaterOrEqual(t, len(families), 40)
	ids := map[string]bool{}
	covered := table{}
	for _, f := range families {
		assert.False(t, ids[f.ID], "%s is there twice", f.ID)
		ids[f.ID] = true
		covered.add("kind "+string(f.Kind), f.ID)
		if f.Move != nil {
			covered.add("move "+moveKind(&f.Move.Move, f.Scene.Openings), f.ID)
		}
		for _, one := range itemsOf(t, f.ID) {
			for i, ask := range one.made.Question.Asks {
				cover(covered, f.ID, ask, &one.truth.Accept[i][0])
			}
		}
	}
	for misleader, list := range misleads {
		for _, id := range list {
			assert.True(t, ids[id], "%s, for %s, is no family", id, misleader)
			covered.add("misleader "+misleader, id)
		}
	}
	for _, what := range wanted() {
		least := 1
		if strings.HasPrefix(what, "kind ") {
			least = 3
		}
		assert.GreaterOrEqual(t, len(covered[what]), least, what)
	}
	maps.Copy(covered, pairFamilies())
	for _, what := range slices.Sorted(maps.Keys(covered)) {
		t.Logf("%-52s %2d  %s", what, len(covered[what]), strings.Join(slices.Sorted(maps.Keys(covered[what])), ", "))
	}
}

func cover(c table, family string, ask quiz.Ask, truth *quiz.Reply) {
	switch ask.Kind {
	case quiz.AskStage:
		c.add("stage "+string(truth.Stage), family)
	case quiz.AskRegime:
		c.add("regime "+string(truth.Regime), family)
	case quiz.AskFlow:
		c.add("flow "+string(truth.Flow), family)
	case quiz.AskTrend:
		c.add("trend "+string(truth.Trend), family)
	case quiz.AskLevel:
		c.add(fmt.Sprint(ask.Cue, " ", *truth.Level), family)
	case quiz.AskMoment:
		c.add(fmt.Sprint("moment quiet ", truth.Quiet), family)
	}
}

func moveKind(m *engine.Move, openings []engine.Opening) string {
	switch {
	case m.WaterL != nil:
		return "water"
	case m.WindMS != nil:
		return "wind"
	case m.MassKg != nil:
		return "fuel"
	}
	for _, o := range openings {
		if o.ID == m.Opening && o.Open != nil && *o.Open > *m.Open {
			return "shuts"
		}
	}
	return "opens"
}

func wanted() []string {
	list := []string{"regime fuel_limited", "regime ventilation_limited", "trend better", "trend steady", "trend worse", "moment quiet true", "moment quiet false"}
	for _, kind := range quiz.ItemKinds {
		list = append(list, "kind "+string(kind))
	}
	for _, stage := range engine.Stages[:len(engine.Stages)-1] {
		list = append(list, "stage "+string(stage))
	}
	for _, flow := range engine.Flows {
		list = append(list, "flow "+string(flow))
	}
	for misleader := range misleads {
		list = append(list, "misleader "+misleader)
	}
	for _, move := range []string{"opens", "shuts", "water", "wind", "fuel"} {
		list = append(list, "move "+move)
	}
	for _, cue := range engine.OrdinalCues {
		for level := 1; level <= engine.TopLevel; level++ {
			list = append(list, fmt.Sprint(cue, " ", level))
		}
	}
	return list
}

// A person's forms ask the same of other scenes: no scene is in two of them, nor
// among those that drills may draw.
func TestFormsShareFamiliesAndNoScene(t *testing.T) {
	for _, person := range []string{"0123456789abcdef", "another"} {
		seeds := map[uint64]bool{}
		var first []string
		for _, kind := range quiz.FormKinds {
			form, err := content.Form(kind, person)
			require.NoError(t, err)
			again, err := content.Form(kind, person)
			require.NoError(t, err)
			assert.Equal(t, form, again)
			var families []string
			for _, scene := range form {
				assert.GreaterOrEqual(t, scene.Seed, uint64(quiz.FirstTestSeed))
				assert.Less(t, scene.Seed, uint64(1)<<53)
				assert.False(t, seeds[scene.Seed], "a scene twice")
				seeds[scene.Seed] = true
				families = append(families, scene.Family)
			}
			if first == nil {
				first = families
			}
			assert.Equal(t, first, families)
		}
		assert.GreaterOrEqual(t, len(first), 20)
	}
	_, err := content.Form("mock", "x")
	require.Error(t, err)
}

// Forms are alike in difficulty: what is near a cut point comes as often in each,
// and every scene of them can be made.
func TestFormsAreAlikeInDifficulty(t *testing.T) {
	if testing.Short() {
		t.Skip("makes 120 scenes")
	}
	margins := map[quiz.FormKind]float64{}
	near := 0
	for _, kind := range quiz.FormKinds {
		n := 0.0
		for _, person := range []string{"a", "b"} {
			form, err := content.Form(kind, person)
			require.NoError(t, err)
			for _, scene := range form {
				made, truth, err := content.MakeScene(scene)
				require.NoError(t, err, "%+v", scene)
				assert.Equal(t, scene.Seed, made.Seed)
				margins[kind] += truth.CutMargin
				n++
				if truth.CutMargin < 0.1 {
					near++
				}
			}
		}
		margins[kind] /= n
	}
	for _, kind := range quiz.FormKinds {
		assert.InDelta(t, margins[quiz.FormPre], margins[kind], 0.12, "%v", margins)
	}
	assert.Positive(t, near, "a test asks what lies near a cut point too")
	t.Log(margins, near)
}
