package score_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/score"
)

// report judges a report of a scene that is watched from 100 to 160 s.
func report(t *testing.T, given, truth quiz.Reply) quiz.Part {
	t.Helper()
	item := &quiz.Item{Kind: quiz.CallOut, Watch: &quiz.Span{FromS: 100, ToS: 160}, Question: quiz.Question{Asks: []quiz.Ask{{ID: "moment", Kind: quiz.AskMoment}}}}
	given.Ask = "moment"
	verdict, err := score.Judge(item, [][]quiz.Reply{{truth}}, &quiz.Answer{Replies: []quiz.Reply{given}})
	require.NoError(t, err)
	return verdict.Parts[0]
}

// A report counts from the moment at which there is something to report up to the
// event, and weighs by how much of that time is left.
func TestReportsAreScoredByWhatIsLeft(t *testing.T) {
	comes := quiz.Reply{AtS: ptr(120.0), EventS: ptr(150.0)}
	for _, c := range []struct {
		at     float64
		signal quiz.Signal
		wrong  float64
		lead   float64
	}{
		{119, quiz.Hit, 0, 31}, {120, quiz.Hit, 0, 30}, {135, quiz.Hit, 0.25, 15}, {150, quiz.Hit, 0.5, 0},
		{117, quiz.FalseAlarm, 1, 0}, {151, quiz.Miss, 1, 0},
	} {
		part := report(t, quiz.Reply{AtS: &c.at}, comes)
		assert.Equal(t, c.signal, part.Signal, "%v", c.at)
		assert.InDelta(t, c.wrong, part.Error, 1e-9, "%v", c.at)
		assert.Equal(t, 150.0, *part.EventS)
		assert.Equal(t, c.signal == quiz.Hit, part.Right)
		if c.signal == quiz.Hit {
			assert.InDelta(t, c.lead, *part.LeadS, 1e-9)
		} else {
			assert.Nil(t, part.LeadS)
		}
		assert.Equal(t, "remark/"+string(c.signal), part.Remark)
	}
	assert.Equal(t, quiz.Miss, report(t, quiz.Reply{Quiet: true}, comes).Signal)
}

func TestReportsOfNothingAreFalseAlarms(t *testing.T) {
	never := quiz.Reply{Quiet: true}
	assert.Equal(t, quiz.FalseAlarm, report(t, quiz.Reply{AtS: ptr(130.0)}, never).Signal)
	right := report(t, quiz.Reply{Quiet: true}, never)
	assert.Equal(t, quiz.CorrectRejection, right.Signal)
	assert.True(t, right.Right)
	assert.Zero(t, right.Error)
	// An event that comes after what is played gives no lead, and the whole span to report in.
	late := report(t, quiz.Reply{AtS: ptr(150.0)}, quiz.Reply{AtS: ptr(140.0)})
	assert.Equal(t, quiz.Hit, late.Signal)
	assert.Nil(t, late.LeadS)
	assert.InDelta(t, 0.25, late.Error, 1e-9)
	assert.Equal(t, 0.5, report(t, quiz.Reply{Unsure: true}, never).Error)
}

// Only a truth says when the event came, and a report is a time or none.
func TestReportsAreValidated(t *testing.T) {
	item := &quiz.Item{Kind: quiz.CallOut, Watch: &quiz.Span{ToS: 60}, Question: quiz.Question{Asks: []quiz.Ask{{ID: "m", Kind: quiz.AskMoment}}}}
	for _, wrong := range []struct {
		where string
		given quiz.Reply
	}{
		{"replies[0].event_s", quiz.Reply{AtS: ptr(1.0), EventS: ptr(2.0)}},
		{"replies[0]", quiz.Reply{AtS: ptr(1.0), Quiet: true}},
		{"replies[0].at_s", quiz.Reply{AtS: ptr(-1.0)}},
		{"replies[0].at_s", quiz.Reply{AtS: ptr(1e300)}},
	} {
		where, given := wrong.where, wrong.given
		given.Ask = "m"
		_, err := score.Judge(item, [][]quiz.Reply{{{Quiet: true}}}, &quiz.Answer{Replies: []quiz.Reply{given}})
		var problem *engine.Problem
		require.ErrorAs(t, err, &problem, where)
		assert.Equal(t, where, problem.Where)
	}
}

func TestTrendsPicksAndOpenings(t *testing.T) {
	assert.Equal(t, 0.5, judge(t, quiz.AskTrend, quiz.Reply{Trend: quiz.Steady}, quiz.Reply{Trend: quiz.Worse}).Error)
	assert.Equal(t, 1.0, judge(t, quiz.AskTrend, quiz.Reply{Trend: quiz.Better}, quiz.Reply{Trend: quiz.Worse}).Error)
	starved := []quiz.Reply{{Trend: quiz.Steady}, {Trend: quiz.Worse}}
	assert.True(t, judge(t, quiz.AskTrend, quiz.Reply{Trend: quiz.Worse}, starved...).Right)
	assert.Equal(t, 0.5, judge(t, quiz.AskTrend, quiz.Reply{Trend: quiz.Better}, starved...).Error)
	assert.Equal(t, 1.0, judge(t, quiz.AskPick, quiz.Reply{Pick: quiz.First}, quiz.Reply{Pick: quiz.Second}).Error)
	assert.InDelta(t, 0.5, judge(t, quiz.AskPick, quiz.Reply{Unsure: true}, quiz.Reply{Pick: quiz.Second}).Error, 1e-12)

	item := &quiz.Item{Kind: quiz.NearestSeat, Show: []string{"a", "b", "c"}, Question: quiz.Question{Asks: []quiz.Ask{{ID: "q", Kind: quiz.AskOpening}}}}
	accept := [][]quiz.Reply{{{Opening: "a"}, {Opening: "b"}}}
	verdict, err := score.Judge(item, accept, &quiz.Answer{Replies: []quiz.Reply{{Ask: "q", Opening: "b"}}})
	require.NoError(t, err)
	assert.Equal(t, 1.0, verdict.Score)
	verdict, err = score.Judge(item, accept, &quiz.Answer{Replies: []quiz.Reply{{Ask: "q", Unsure: true}}})
	require.NoError(t, err)
	assert.InDelta(t, 2.0/3, verdict.Score, 1e-12, "one of three openings is wrong")
	_, err = score.Judge(item, accept, &quiz.Answer{Replies: []quiz.Reply{{Ask: "q", Opening: "d"}}})
	require.Error(t, err, "it is not shown")
}

// What a call has in common with the truth, over all that either names: two words
// of two, one of three, none of four.
func TestCallsAreScoredByOverlap(t *testing.T) {
	item := &quiz.Item{Kind: quiz.CallStage, Question: quiz.Question{Asks: []quiz.Ask{{ID: "s", Kind: quiz.AskStage}, {ID: "r", Kind: quiz.AskRegime}}}}
	accept := [][]quiz.Reply{{{Stage: engine.Growth}, {Stage: engine.PreFlashover}}, {{Regime: engine.FuelLimited}}}
	for want, given := range map[float64][]quiz.Reply{
		1:       {{Ask: "s", Stage: engine.PreFlashover}, {Ask: "r", Regime: engine.FuelLimited}},
		1.0 / 3: {{Ask: "s", Stage: engine.Growth}, {Ask: "r", Regime: engine.VentilationLimited}},
		0:       {{Ask: "s", Stage: engine.Decay}, {Ask: "r", Regime: engine.VentilationLimited}},
		0.5:     {{Ask: "s", Unsure: true}, {Ask: "r", Regime: engine.FuelLimited}},
	} {
		verdict, err := score.Judge(item, accept, &quiz.Answer{Replies: given})
		require.NoError(t, err)
		assert.InDelta(t, want, *verdict.Overlap, 1e-12)
	}
}
