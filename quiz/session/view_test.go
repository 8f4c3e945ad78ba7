package session_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz/session"
)

var signs = []string{"Engine 1", "Engine 2", "Truck 7", "Rescue 4"}

// compared is a class of four at the compare of its first scene: volume is 3.
func compared() log {
	return opened(session.Led, scene("s1", 20), scene("s2", 0)).joined(signs...).started(1).
		committed("s1", 1, 3).committed("s1", 2, 4).committed("s1", 3, 1).committed("s1", 4, 1).to(2, session.Commit, "s1").to(3, session.Compare, "s1")
}

func TestTheSpreadIsShownBeforeTheTruth(t *testing.T) {
	s := compared().play(t)
	volume := s.PhoneView().Compare.Asks[0]
	assert.Equal(t, []session.Count{{Value: "0"}, {Value: "1", N: 2}, {Value: "2"}, {Value: "3", N: 1}, {Value: "4", N: 1}}, volume.Counts)
	assert.Equal(t, []float64{0.4, 0.4, 0.4, 0.4}, s.PhoneView().Compare.Asks[1].Planes)
	assert.Nil(t, volume.Truth)
	assert.Zero(t, volume.MeanErr)
	assert.Equal(t, &session.Apart{Low: "1", LowN: 2, High: "4", HighN: 1}, volume.Apart)

	s = compared().to(4, session.Cutaway, "s1").play(t)
	volume = s.PhoneView().Compare.Asks[0]
	assert.Equal(t, 3, *volume.Truth[0].Level)
	assert.Equal(t, 1, volume.Right)
	// (0 + 1 + 2 + 2) steps of 4, over four people; signed (0 + 1 - 2 - 2) / 4.
	assert.InDelta(t, 5.0/16, volume.MeanErr, 1e-12)
	assert.InDelta(t, -3.0/4, *volume.MeanStep, 1e-12)
	assert.Equal(t, "level:volume@door", s.PhoneView().Compare.Worst)
	s = compared()[:8].play(t)
	assert.Nil(t, s.PhoneView().Compare, "nothing before the compare")
}

// Neither the wall nor anybody's phone ever holds a name or a device of another.
func TestNoNamesLeaveTheBoard(t *testing.T) {
	l := compared().to(4, session.Cutaway, "s1")
	for cut := 1; cut <= len(l); cut++ {
		s := l[:cut].play(t)
		for _, view := range []any{s.PhoneView(), s.ProjectorView()} {
			text, err := json.Marshal(view)
			require.NoError(t, err)
			for _, sign := range signs {
				assert.NotContains(t, string(text), sign)
			}
			assert.NotContains(t, string(text), "device")
			assert.NotContains(t, string(text), "_by")
			assert.NotContains(t, string(text), "ask why", "the note is the instructor's")
		}
	}
	s := l.play(t)
	own := s.PlaceViews("device Truck 7")
	require.Len(t, own, 1)
	assert.Equal(t, session.PlaceView{Place: "a", Person: 3, CallSign: "Truck 7", Committed: []string{"s1"}}, own[0])
}

func TestTheBoardSaysWhatWentWrong(t *testing.T) {
	choices := []session.Choice{{Family: "family-s1", Cues: []string{"volume"}}, {Family: "low-volume", Title: "Little shows", Cues: []string{"volume"}}, {Family: "planes", Cues: []string{"neutral_plane"}}}
	s := compared().play(t)
	board := s.BoardView(choices)
	require.NotNil(t, board.Misread)
	assert.Equal(t, session.Misread{Cue: "volume", Judged: 4, Right: 1, MeanErr: 5.0 / 16, Way: session.TooLight}, *board.Misread)
	assert.Equal(t, &session.Suggestion{Family: "low-volume", Title: "Little shows", Seed: 1, Cue: "volume", Way: session.TooLight}, board.Suggest, "a family that the class has not had")
	assert.Equal(t, []int{3, 4}, board.Scenes[0].Spread.Asks[0].Apart.LowBy)
	assert.EqualValues(t, 3+session.UndoMS, board.UndoMS)
	assert.InDelta(t, 0.75, *board.People[2].Score, 1e-12)

	doubted := compared().then(session.Entry{Kind: session.Disagreed, Scene: "s1", Ask: "level:volume@door", On: true, By: "Chief", Note: "seen from the side"}).play(t)
	board = doubted.BoardView(choices)
	assert.Nil(t, board.Misread, "a doubted key is kept out")
	assert.InDelta(t, 1, *board.People[2].Score, 1e-12)
	report := doubted.Report(choices)
	assert.Equal(t, []session.Doubt{{Ask: "level:volume@door", By: "Chief", Note: "seen from the side"}}, report.Scenes[0].Doubts, "and shown in the report")
	assert.Equal(t, 1, report.Scenes[0].Spread.Asks[0].Right)
}

func TestTheReport(t *testing.T) {
	choices := []session.Choice{{Family: "low-volume", Cues: []string{"volume"}}}
	s := compared().then(session.Entry{Kind: session.Removed, Person: 4, On: true}, session.Entry{Kind: session.Ended, AtMS: 99}).play(t)
	report := s.Report(choices)
	assert.EqualValues(t, 99, report.EndedMS)
	assert.Equal(t, "volume", report.Cues[0].Cue)
	assert.Equal(t, 3, report.Cues[0].Judged, "the removed do not count")
	require.Len(t, report.Repeat, 1)
	require.Len(t, report.People, 4)
	truck := report.People[2]
	assert.Equal(t, "volume", truck.Bias[0].Cue)
	assert.Equal(t, session.TooLight, truck.Bias[0].Way)
	assert.Equal(t, 3, *truck.Answers[0].Parts[0].Truth[0].Level)
	assert.Nil(t, s.PersonReport(9))
}

// Two cues misread, and one family would serve both: each gets one of its own.
func TestNoFamilyIsProposedTwice(t *testing.T) {
	both := mark("e", 0)
	both.Parts[1].Error = 0.6
	s := opened(session.Led, scene("s1", 0)).joined("a").
		then(session.Entry{Kind: session.Committed, AtMS: 9000, Person: 1, Scene: "s1", Answer: both}).play(t)
	served := session.Choice{Family: "both", Cues: []string{"volume", "neutral_plane"}}
	other := session.Choice{Family: "other", Cues: []string{"volume", "neutral_plane"}}

	repeat := s.Report([]session.Choice{served, other}).Repeat
	require.Len(t, repeat, 2)
	assert.ElementsMatch(t, []string{"both", "other"}, []string{repeat[0].Family, repeat[1].Family})
	assert.Len(t, s.Report([]session.Choice{served}).Repeat, 1, "one family is proposed once")
}

// Of pairs equally far apart the one that divides the class is named.
func TestTheTwoReadingsThatDisagreeMost(t *testing.T) {
	people := []string{"a", "b", "c", "d", "e"}
	l := opened(session.Led, scene("s1", 0)).joined(people...)
	for i, volume := range []int{0, 4, 4, 2, 2} {
		l = l.committed("s1", i+1, volume)
	}
	s := l.play(t)
	assert.Equal(t, &session.Apart{Low: "0", LowN: 1, LowBy: []int{1}, High: "4", HighN: 2, HighBy: []int{2, 3}}, s.BoardView(nil).Scenes[0].Spread.Asks[0].Apart)
	assert.Nil(t, s.BoardView(nil).Scenes[0].Spread.Asks[1].Apart, "all agree on the plane")
}

func TestASelfPacedClassShowsTheWholeSet(t *testing.T) {
	l := opened(session.Self, scene("s1", 0), scene("s2", 30))
	s := l.play(t)
	assert.Empty(t, s.PhoneView().Scenes)
	s = l.started(5).play(t)
	require.Len(t, s.PhoneView().Scenes, 2)
	assert.Equal(t, session.Shown{ID: "s2", Number: 2, Of: 2, Family: "family-s2", Seed: 7, LookS: 30}, s.PhoneView().Scenes[1])
	assert.Nil(t, s.PhoneView().Scene)
}
