package progress_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/progress"
	"lintel/quiz/score"
)

// answered is an attempt with one ask, judged as practice judges it.
func answered(t *testing.T, kind quiz.ItemKind, ask quiz.Ask, given quiz.Reply, accept ...quiz.Reply) quiz.Attempt {
	t.Helper()
	item := &quiz.Item{Kind: kind, Show: []string{"a", "b"}, Watch: &quiz.Span{ToS: 60}, Question: quiz.Question{Asks: []quiz.Ask{ask}}}
	given.Ask = ask.ID
	verdict, err := score.Judge(item, [][]quiz.Reply{accept}, &quiz.Answer{Replies: []quiz.Reply{given}})
	require.NoError(t, err)
	return quiz.Attempt{Family: "f", Kind: kind, Parts: verdict.Parts, Overlap: verdict.Overlap, TookS: 8}
}

func level(t *testing.T, c engine.Cue, given, truth int) quiz.Attempt {
	t.Helper()
	return answered(t, quiz.ReadOpening, quiz.Ask{ID: "level:" + string(c), Kind: quiz.AskLevel, Cue: c}, quiz.Reply{Level: &given}, quiz.Reply{Level: &truth})
}

func of(p quiz.Progress, s quiz.Skill) *quiz.SkillProgress {
	for i := range p.Skills {
		if p.Skills[i].Skill == s {
			return &p.Skills[i]
		}
	}
	return nil
}

func TestTheWeakestSkillComesFirstWithItsLean(t *testing.T) {
	var record []quiz.Attempt
	for n := range 60 {
		truth := n % 4
		record = append(record, level(t, engine.CueVelocity, truth, truth), level(t, engine.CueDensity, truth+1, truth))
	}
	p := progress.Of(record)
	assert.Equal(t, 120, p.N)
	require.Len(t, p.Skills, 2)
	assert.Equal(t, quiz.SkillDensity, p.Skills[0].Skill)
	assert.InDelta(t, 1, *p.Skills[0].Bias, 1e-12, "always one step too heavy")
	assert.InDelta(t, 0.25, p.Skills[0].Error, 1e-12)
	assert.InDelta(t, 1, *of(p, quiz.SkillVelocity).Kappa, 1e-12)
	assert.Less(t, *p.Skills[0].Kappa, 0.9)
	assert.Equal(t, 8.0, *p.MedianTookS)
	require.NotEmpty(t, p.Confusions)
	assert.Equal(t, engine.CueDensity, p.Confusions[0].Contrast.Cue)
	assert.Equal(t, 15, p.Confusions[0].N)
}

// Kappa needs fifty ratings, and "cannot tell" is none.
func TestKappaWaitsForFiftyRatings(t *testing.T) {
	var record []quiz.Attempt
	for n := range 49 {
		record = append(record, level(t, engine.CueVolume, n%5, n%5))
	}
	unsure := answered(t, quiz.ReadOpening, quiz.Ask{ID: "level:volume", Kind: quiz.AskLevel, Cue: engine.CueVolume}, quiz.Reply{Unsure: true}, quiz.Reply{Level: new(2)})
	p := progress.Of(append(record, unsure))
	assert.Nil(t, of(p, quiz.SkillVolume).Kappa)
	assert.Equal(t, 50, of(p, quiz.SkillVolume).N)
	assert.Equal(t, 49, of(p, quiz.SkillVolume).Given)
	p = progress.Of(append(record, level(t, engine.CueVolume, 1, 1)))
	assert.NotNil(t, of(p, quiz.SkillVolume).Kappa)
}

// A blind guesser's credit is what each kind is given for it: ability then stays
// about nought, whatever is asked.
func TestABlindGuesserGainsNothing(t *testing.T) {
	draw := rand.New(rand.NewPCG(3, 5))
	var record []quiz.Attempt
	for range 1500 {
		record = append(record, level(t, engine.CueDarkness, draw.IntN(5), draw.IntN(5)))
		flows := engine.Flows
		record = append(record, answered(t, quiz.FlowPlane, quiz.Ask{ID: "flow", Kind: quiz.AskFlow}, quiz.Reply{Flow: flows[draw.IntN(4)]}, quiz.Reply{Flow: flows[draw.IntN(4)]}))
		stages := engine.Stages[:7]
		record = append(record, answered(t, quiz.CallStage, quiz.Ask{ID: "stage", Kind: quiz.AskStage}, quiz.Reply{Stage: stages[draw.IntN(7)]}, quiz.Reply{Stage: stages[draw.IntN(7)]}))
		changes := []quiz.Change{quiz.Less, quiz.Same, quiz.More}
		record = append(record, answered(t, quiz.PredictMove, quiz.Ask{ID: "change", Kind: quiz.AskChange}, quiz.Reply{Change: changes[draw.IntN(3)]}, quiz.Reply{Change: changes[draw.IntN(3)]}))
		picks := []quiz.Pick{quiz.First, quiz.Second}
		record = append(record, answered(t, quiz.WhichOfTwo, quiz.Ask{ID: "pick", Kind: quiz.AskPick}, quiz.Reply{Pick: picks[draw.IntN(2)]}, quiz.Reply{Pick: picks[draw.IntN(2)]}))
	}
	p := progress.Of(record)
	for skill, credit := range map[quiz.Skill]float64{quiz.SkillDarkness: 0.6, quiz.SkillFlow: 0.375, quiz.SkillStage: 0.3265, quiz.SkillChange: 0.5556, quiz.SkillPair: 0.5} {
		assert.InDelta(t, credit, 1-of(p, skill).Error, 0.02, skill)
		assert.Less(t, of(p, skill).Ability, -0.8, "%s: a guesser is worse than someone who knows half", skill)
	}
}

func TestReportsAndCallsAreAddedUp(t *testing.T) {
	ask := quiz.Ask{ID: "moment", Kind: quiz.AskMoment}
	comes, never := quiz.Reply{AtS: new(20.0), EventS: new(50.0)}, quiz.Reply{Quiet: true}
	p := progress.Of([]quiz.Attempt{
		answered(t, quiz.CallOut, ask, quiz.Reply{AtS: new(30.0)}, comes),
		answered(t, quiz.CallOut, ask, quiz.Reply{AtS: new(40.0)}, comes),
		answered(t, quiz.CallOut, ask, quiz.Reply{Quiet: true}, comes),
		answered(t, quiz.CallOut, ask, quiz.Reply{Quiet: true}, never),
		answered(t, quiz.CallOut, ask, quiz.Reply{AtS: new(5.0)}, never),
	})
	assert.Equal(t, quiz.ReportProgress{N: 5, Hits: 2, Misses: 1, FalseAlarms: 1, CorrectRejections: 1, DPrime: p.Reports.DPrime, Criterion: p.Reports.Criterion, LeadS: new(15.0)}, p.Reports)
	d, _, _ := score.Detection(2, 1, 1, 1)
	assert.InDelta(t, d, *p.Reports.DPrime, 1e-12)

	call := answered(t, quiz.CallStage, quiz.Ask{ID: "stage", Kind: quiz.AskStage}, quiz.Reply{Stage: engine.Decay}, quiz.Reply{Stage: engine.Growth})
	call.Confidence, call.Brier = new(0.9), new(0.81)
	p = progress.Of([]quiz.Attempt{call})
	assert.Equal(t, 1, p.Calls.N)
	assert.InDelta(t, 0.9, *p.Calls.Gap, 1e-12)
	assert.Equal(t, []engine.Stage{engine.Growth, engine.Decay}, p.Confusions[0].Contrast.Stages)
}

// Every kind with a choice counts toward calibration, and each stands by itself too.
func TestSureAndRightByKind(t *testing.T) {
	sure := func(a quiz.Attempt, confidence, brier float64) quiz.Attempt {
		a.Confidence, a.Brier = &confidence, &brier
		return a
	}
	change := quiz.Ask{ID: "change", Kind: quiz.AskChange}
	pick := quiz.Ask{ID: "pick", Kind: quiz.AskPick}
	more, less := quiz.Reply{Change: quiz.More}, quiz.Reply{Change: quiz.Less}
	p := progress.Of([]quiz.Attempt{
		sure(answered(t, quiz.PredictMove, change, more, more), 0.9, 0.01),
		sure(answered(t, quiz.PredictMove, change, more, less), 0.9, 0.81),
		sure(answered(t, quiz.WhichOfTwo, pick, quiz.Reply{Pick: quiz.First}, quiz.Reply{Pick: quiz.First}), 0.6, 0.16),
		answered(t, quiz.WhichOfTwo, pick, quiz.Reply{Pick: quiz.First}, quiz.Reply{Pick: quiz.First}),
		sure(answered(t, quiz.WhichOfTwo, pick, quiz.Reply{Unsure: true}, quiz.Reply{Pick: quiz.First}), 0.6, 0.36),
		sure(level(t, engine.CueVolume, 2, 2), 0.9, 0.01),
	})
	assert.Equal(t, 3, p.Calls.N, "neither what could not be told nor a rating is a choice")
	assert.InDelta(t, (0.01+0.81+0.16)/3, *p.Calls.Brier, 1e-12)
	require.Len(t, p.Calls.Kinds, 2)
	assert.Equal(t, quiz.KindSum{Kind: quiz.PredictMove, N: 2, Said: 0.9, Right: 0.5}, p.Calls.Kinds[0])
	assert.Equal(t, quiz.KindSum{Kind: quiz.WhichOfTwo, N: 1, Said: 0.6, Right: 1}, p.Calls.Kinds[1])
}

// A verdict of an older version names kind and cue only in its ask; one of a newer
// version may hold what is not known here.
func TestOldAndNewVerdicts(t *testing.T) {
	old := level(t, engine.CueVelocity, 3, 2)
	old.Parts[0].Kind, old.Parts[0].Cue, old.Parts[0].Ask = "", "", "level:velocity@door"
	strange := level(t, engine.CueVelocity, 3, 2)
	strange.Parts[0].Kind = "hum"
	p := progress.Of([]quiz.Attempt{old, strange})
	require.Len(t, p.Skills, 1)
	assert.Equal(t, quiz.SkillVelocity, p.Skills[0].Skill)
	assert.Equal(t, 1, p.Skills[0].N)
	assert.Equal(t, quiz.Progress{V: 1, Skills: []quiz.SkillProgress{}, Calls: quiz.CallProgress{Calibration: []quiz.Bin{}, Kinds: []quiz.KindSum{}}, Confusions: []quiz.Confusion{}, Families: []quiz.FamilyRating{}}, progress.Of(nil))
}
