package score_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/score"
)

func ptr[T any](x T) *T { return &x }

// The worked examples of the Brier score as an encyclopaedia gives them: rain
// forecast at 70 % and it rains, 0.09; at 30 % and it rains, 0.49; at 50 %, 0.25
// either way; at 100 % and it rains, 0 (Wikipedia, "Brier score", section
// Example).
func TestBrierOfTheRainForecast(t *testing.T) {
	for _, c := range []struct {
		confidence float64
		rained     bool
		want       float64
	}{{0.7, true, 0.09}, {0.3, true, 0.49}, {0.5, true, 0.25}, {0.5, false, 0.25}, {1, true, 0}, {1, false, 1}} {
		assert.InDelta(t, c.want, score.Brier(c.confidence, c.rained), 1e-12, "%v %v", c.confidence, c.rained)
	}
}

// A score is proper when no one can do better than by saying what they believe
// (T. Gneiting and A. E. Raftery, "Strictly proper scoring rules, prediction,
// and estimation", Journal of the American Statistical Association, 2007).
func TestBrierRewardsSayingWhatOneBelieves(t *testing.T) {
	expected := func(belief, said float64) float64 {
		return belief*score.Brier(said, true) + (1-belief)*score.Brier(said, false)
	}
	for belief := 0.5; belief <= 1; belief += 0.05 {
		honest := expected(belief, belief)
		for said := 0.5; said <= 1; said += 0.01 {
			assert.GreaterOrEqual(t, expected(belief, said), honest-1e-12, "believes %v, says %v", belief, said)
		}
	}
}

// lone is an item of one ask with its right replies.
func lone(kind quiz.AskKind, accept ...quiz.Reply) (*quiz.Item, [][]quiz.Reply) {
	return &quiz.Item{Kind: quiz.CallStage, Question: quiz.Question{Asks: []quiz.Ask{{ID: "q", Kind: kind}}}}, [][]quiz.Reply{accept}
}

func judge(t *testing.T, kind quiz.AskKind, given quiz.Reply, accept ...quiz.Reply) quiz.Part {
	t.Helper()
	item, truth := lone(kind, accept...)
	given.Ask = "q"
	verdict, err := score.Judge(item, truth, &quiz.Answer{Replies: []quiz.Reply{given}})
	require.NoError(t, err)
	require.Len(t, verdict.Parts, 1)
	assert.InDelta(t, 1-verdict.Parts[0].Error, verdict.Score, 1e-12)
	return verdict.Parts[0]
}

func TestLevelsAreScoredBySignedSteps(t *testing.T) {
	for given := range 5 {
		for truth := range 5 {
			part := judge(t, quiz.AskLevel, quiz.Reply{Level: &given}, quiz.Reply{Level: &truth})
			require.NotNil(t, part.Steps)
			assert.Equal(t, given-truth, *part.Steps)
			assert.InDelta(t, float64(max(given-truth, truth-given))/4, part.Error, 1e-12)
			assert.Equal(t, given == truth, part.Right)
		}
	}
	part := judge(t, quiz.AskLevel, quiz.Reply{Level: ptr(1)}, quiz.Reply{Level: ptr(4)}, quiz.Reply{Level: ptr(2)})
	assert.Equal(t, -1, *part.Steps, "the nearest acceptable level counts")
	assert.Equal(t, "remark/light/one|n=1|truth=4", part.Remark)
}

func TestCallsAreScoredAgainstTheAcceptableSet(t *testing.T) {
	set := []quiz.Reply{{Stage: engine.Growth}, {Stage: engine.PreFlashover}}
	assert.True(t, judge(t, quiz.AskStage, quiz.Reply{Stage: engine.PreFlashover}, set...).Right)
	assert.Equal(t, 0.5, judge(t, quiz.AskStage, quiz.Reply{Stage: engine.FullyDeveloped}, set...).Error)
	assert.Equal(t, 1.0, judge(t, quiz.AskStage, quiz.Reply{Stage: engine.AfterKnockDown}, set...).Error)
	assert.Equal(t, 1.0, judge(t, quiz.AskRegime, quiz.Reply{Regime: engine.FuelLimited}, quiz.Reply{Regime: engine.VentilationLimited}).Error)
}

func TestPlaneWithinATenthIsRight(t *testing.T) {
	for _, c := range []struct {
		given, truth, wrong float64
		right               bool
	}{{0.4, 0.4, 0, true}, {0.8, 0.7, 0.2, true}, {0.7, 0.8, 0.2, true}, {0.55, 0.4, 0.3, false}, {1, 0, 1, false}, {0, 0.4, 0.8, false}} {
		part := judge(t, quiz.AskPlane, quiz.Reply{Plane: &c.given}, quiz.Reply{Plane: &c.truth})
		assert.InDelta(t, c.wrong, part.Error, 1e-9, "%+v", c)
		assert.Equal(t, c.right, part.Right, "%+v", c)
	}
}

// A plane of 0 or 1 is no plane: the remark says which way all of it goes.
func TestNoPlaneIsSaidInWords(t *testing.T) {
	for _, c := range []struct {
		given, truth float64
		want         string
	}{
		{0, 0, "remark/all_out/right|percent=0"},
		{0.4, 0, "remark/all_out/too_high|percent=0"},
		{0.4, 1, "remark/all_in/too_low|percent=100"},
		{0.7, 0.4, "remark/plane/too_high|percent=40"},
	} {
		assert.Equal(t, c.want, judge(t, quiz.AskPlane, quiz.Reply{Plane: &c.given}, quiz.Reply{Plane: &c.truth}).Remark)
	}
	assert.Equal(t, "remark/all_out/unsure|percent=0",
		judge(t, quiz.AskPlane, quiz.Reply{Unsure: true}, quiz.Reply{Plane: ptr(0.0)}).Remark)
}

func TestFlowsAndChangesHaveNearMisses(t *testing.T) {
	assert.Equal(t, 0.5, judge(t, quiz.AskFlow, quiz.Reply{Flow: engine.FlowOut}, quiz.Reply{Flow: engine.FlowBoth}).Error)
	assert.Equal(t, 1.0, judge(t, quiz.AskFlow, quiz.Reply{Flow: engine.FlowOut}, quiz.Reply{Flow: engine.FlowIn}).Error)
	assert.Equal(t, 1.0, judge(t, quiz.AskFlow, quiz.Reply{Flow: engine.FlowNone}, quiz.Reply{Flow: engine.FlowIn}).Error)
	assert.Equal(t, 0.5, judge(t, quiz.AskChange, quiz.Reply{Change: quiz.Same}, quiz.Reply{Change: quiz.More}).Error)
	assert.Equal(t, 1.0, judge(t, quiz.AskChange, quiz.Reply{Change: quiz.Less}, quiz.Reply{Change: quiz.More}).Error)
}

// Cannot tell must cost exactly what guessing costs on average: never more, or
// nobody would admit it, and never less, or everybody would hide behind it.
func TestUnsureCostsABlindGuess(t *testing.T) {
	sum := 0.0
	for level := range 5 {
		sum += judge(t, quiz.AskLevel, quiz.Reply{Level: &level}, quiz.Reply{Level: ptr(1)}).Error
	}
	part := judge(t, quiz.AskLevel, quiz.Reply{Unsure: true}, quiz.Reply{Level: ptr(1)})
	assert.InDelta(t, sum/5, part.Error, 1e-12)
	assert.False(t, part.Right)
	assert.Nil(t, part.Steps)

	part = judge(t, quiz.AskRegime, quiz.Reply{Unsure: true}, quiz.Reply{Regime: engine.FuelLimited})
	assert.InDelta(t, 0.5, part.Error, 1e-12)
	part = judge(t, quiz.AskPlane, quiz.Reply{Unsure: true}, quiz.Reply{Plane: ptr(0.5)})
	assert.InDelta(t, 0.5, part.Error, 0.01)
}

func TestConfidenceIsScoredOnTheWholeCall(t *testing.T) {
	item := &quiz.Item{Kind: quiz.CallStage, Question: quiz.Question{Asks: []quiz.Ask{{ID: "s", Kind: quiz.AskStage}, {ID: "r", Kind: quiz.AskRegime}}}}
	accept := [][]quiz.Reply{{{Stage: engine.Growth}}, {{Regime: engine.FuelLimited}}}
	answer := quiz.Answer{Confidence: ptr(0.9), Replies: []quiz.Reply{{Ask: "s", Stage: engine.Growth}, {Ask: "r", Regime: engine.FuelLimited}}}
	verdict, err := score.Judge(item, accept, &answer)
	require.NoError(t, err)
	assert.InDelta(t, 0.01, *verdict.Brier, 1e-12)
	assert.Equal(t, 1.0, verdict.Score)

	answer.Replies[1].Regime = engine.VentilationLimited
	verdict, err = score.Judge(item, accept, &answer)
	require.NoError(t, err)
	assert.InDelta(t, 0.81, *verdict.Brier, 1e-12)
	assert.Equal(t, 0.5, verdict.Score)

	answer.Replies = answer.Replies[:1]
	verdict, err = score.Judge(item, accept, &answer)
	require.NoError(t, err)
	assert.Equal(t, "remark/unanswered", verdict.Parts[1].Remark)
	assert.Equal(t, 1.0, verdict.Parts[1].Error)
}

// A plane is an estimate and takes no part; of a rating alone, and of what could
// not be told, nobody is sure.
func TestConfidenceIsInChoicesAlone(t *testing.T) {
	item := &quiz.Item{Kind: quiz.FlowPlane, Question: quiz.Question{Asks: []quiz.Ask{{ID: "f", Kind: quiz.AskFlow}, {ID: "p", Kind: quiz.AskPlane}}}}
	accept := [][]quiz.Reply{{{Flow: engine.FlowBoth}}, {{Plane: ptr(0.5)}}}
	answer := quiz.Answer{Confidence: ptr(0.75), Replies: []quiz.Reply{{Ask: "f", Flow: engine.FlowBoth}, {Ask: "p", Plane: ptr(0.9)}}}
	verdict, err := score.Judge(item, accept, &answer)
	require.NoError(t, err)
	assert.False(t, verdict.Parts[1].Right)
	assert.InDelta(t, 0.0625, *verdict.Brier, 1e-12)

	answer.Replies[0] = quiz.Reply{Ask: "f", Unsure: true}
	verdict, err = score.Judge(item, accept, &answer)
	require.NoError(t, err)
	assert.Nil(t, verdict.Brier)

	item, accept = lone(quiz.AskLevel, quiz.Reply{Level: ptr(2)})
	verdict, err = score.Judge(item, accept, &quiz.Answer{Confidence: ptr(0.9), Replies: []quiz.Reply{{Ask: "q", Level: ptr(2)}}})
	require.NoError(t, err)
	assert.Nil(t, verdict.Brier)
}

func TestJudgeRefusesWhatIsNoAnswer(t *testing.T) {
	item, accept := lone(quiz.AskLevel, quiz.Reply{Level: ptr(2)})
	for name, c := range map[string]struct {
		answer quiz.Answer
		where  string
	}{
		"another question":    {quiz.Answer{Replies: []quiz.Reply{{Ask: "z", Level: ptr(1)}}}, "replies[0].ask"},
		"twice":               {quiz.Answer{Replies: []quiz.Reply{{Ask: "q", Level: ptr(1)}, {Ask: "q", Level: ptr(2)}}}, "replies[1].ask"},
		"nothing given":       {quiz.Answer{Replies: []quiz.Reply{{Ask: "q"}}}, "replies[0]"},
		"the wrong kind":      {quiz.Answer{Replies: []quiz.Reply{{Ask: "q", Flow: engine.FlowIn}}}, "replies[0]"},
		"two kinds":           {quiz.Answer{Replies: []quiz.Reply{{Ask: "q", Level: ptr(1), Flow: engine.FlowIn}}}, "replies[0]"},
		"unsure and sure":     {quiz.Answer{Replies: []quiz.Reply{{Ask: "q", Level: ptr(1), Unsure: true}}}, "replies[0]"},
		"level five":          {quiz.Answer{Replies: []quiz.Reply{{Ask: "q", Level: ptr(5)}}}, "replies[0].level"},
		"more than certain":   {quiz.Answer{Confidence: ptr(1.1)}, "confidence"},
		"less than a toss-up": {quiz.Answer{Confidence: ptr(0.3)}, "confidence"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := score.Judge(item, accept, &c.answer)
			var problem *engine.Problem
			require.ErrorAs(t, err, &problem)
			assert.Equal(t, c.where, problem.Where)
		})
	}
}
