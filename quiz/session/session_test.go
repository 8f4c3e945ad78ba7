package session_test

import (
	"encoding/json"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/quiz/session"
)

// Lists of entries, and where they leave the class.
func TestListsOfEntriesLeadToStates(t *testing.T) {
	led := opened(session.Led, scene("s1", 20), scene("s2", 0))
	for _, c := range []struct {
		name  string
		log   log
		point session.Point
	}{
		{"opened", led, session.Point{Step: session.Gather}},
		{"started", led.started(5000), session.Point{Step: session.Watch, Scene: "s1", LookFrom: 5000, LookUntil: 25_000}},
		{"started elsewhere", led.then(session.Entry{Kind: session.Started, AtMS: 5000, Scene: "s2"}), session.Point{Step: session.Watch, Scene: "s2", LookFrom: 5000}},
		{"extended", led.started(5000).then(session.Entry{Kind: session.LookExtended, AtMS: 9000, AddS: 10}), session.Point{Step: session.Watch, Scene: "s1", LookFrom: 5000, LookUntil: 35_000}},
		{"extended after its end", led.started(5000).then(session.Entry{Kind: session.LookExtended, AtMS: 40_000, AddS: 10}), session.Point{Step: session.Watch, Scene: "s1", LookFrom: 5000, LookUntil: 50_000}},
		{"untimed", led.started(5000).then(session.Entry{Kind: session.LookUntimed, AtMS: 9000}), session.Point{Step: session.Watch, Scene: "s1", LookFrom: 5000}},
		{"commit", led.started(5000).to(30_000, session.Commit, "s1"), session.Point{Step: session.Commit, Scene: "s1"}},
		{"another look", led.started(5000).to(30_000, session.Commit, "s1").to(40_000, session.Watch, "s1"), session.Point{Step: session.Watch, Scene: "s1", LookFrom: 40_000, LookUntil: 60_000}},
		{"cutaway", led.started(1).to(2, session.Commit, "s1").to(3, session.Compare, "s1").to(4, session.Cutaway, "s1"), session.Point{Step: session.Cutaway, Scene: "s1"}},
		{"next scene", led.started(1).to(2, session.Commit, "s1").to(3, session.Compare, "s1").to(4, session.Watch, "s2"), session.Point{Step: session.Watch, Scene: "s2", LookFrom: 4}},
		{"undone", led.started(1).to(2, session.Commit, "s1").to(3000, session.Compare, "s1").then(session.Entry{Kind: session.Undone, AtMS: 8000}), session.Point{Step: session.Commit, Scene: "s1"}},
		{"ended and undone", led.started(1).then(session.Entry{Kind: session.Ended, AtMS: 10}, session.Entry{Kind: session.Undone, AtMS: 20}), session.Point{Step: session.Watch, Scene: "s1", LookFrom: 1, LookUntil: 20_001}},
		{"ended", led.then(session.Entry{Kind: session.Ended, AtMS: 10}), session.Point{Step: session.Over}},
		{"self-paced", opened(session.Self, scene("s1", 0)).started(5), session.Point{Step: session.Commit}},
		{"self-paced, all meet", opened(session.Self, scene("s1", 0)).started(5).to(9, session.Compare, "s1"), session.Point{Step: session.Compare, Scene: "s1"}},
		{"self-paced, on again", opened(session.Self, scene("s1", 0)).started(5).to(9, session.Compare, "s1").to(10, session.Commit, ""), session.Point{Step: session.Commit}},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.point, c.log.play(t).Point) })
	}
}

func TestWhatAClassDoesNotAllow(t *testing.T) {
	led := opened(session.Led, scene("s1", 20), scene("s2", 0)).joined("E1")
	compared := led.started(1).to(2, session.Commit, "s1").to(3, session.Compare, "s1")
	for _, c := range []struct {
		name string
		log  log
		e    session.Entry
		says string
	}{
		{"opened twice", led, opened(session.Led, scene("s1", 0))[0], "once"},
		{"started twice", led.started(1), session.Entry{Kind: session.Started}, "has started already"},
		{"a step before the start", led, session.Entry{Kind: session.Stepped, To: session.Watch, Scene: "s1"}, "start it first"},
		{"a commit unseen", led.started(1), session.Entry{Kind: session.Stepped, To: session.Commit, Scene: "s2"}, "be watched first"},
		{"a compare too early", led.started(1), session.Entry{Kind: session.Stepped, To: session.Compare, Scene: "s1"}, "be committed first"},
		{"a cutaway too early", led.started(1).to(2, session.Commit, "s1"), session.Entry{Kind: session.Stepped, To: session.Cutaway, Scene: "s1"}, "compare the readings first"},
		{"a look after the compare", compared, session.Entry{Kind: session.Stepped, To: session.Watch, Scene: "s1"}, "compared already"},
		{"back to gather", led.started(1), session.Entry{Kind: session.Stepped, To: session.Gather, Scene: "s1"}, "step to watch"},
		{"an undo too late", compared, session.Entry{Kind: session.Undone, AtMS: 5004}, "cannot be taken back"},
		{"an undo twice", compared.then(session.Entry{Kind: session.Undone, AtMS: 4}), session.Entry{Kind: session.Undone, AtMS: 5}, "cannot be taken back"},
		{"an extension of no end", led.then(session.Entry{Kind: session.Started, Scene: "s2"}), session.Entry{Kind: session.LookExtended, AddS: 5}, "no end to put off"},
		{"an extension backward", led.started(1), session.Entry{Kind: session.LookExtended, AddS: -5}, "give 1 to 1800"},
		{"a stranger's scene", led.started(1), session.Entry{Kind: session.Stepped, To: session.Watch, Scene: "s9"}, "not one of this class"},
		{"a place taken", led, session.Entry{Kind: session.Joined, Member: &session.Member{CallSign: "X", Device: "device E1", Place: "a"}}, "is taken already"},
		{"a third on a phone", led, session.Entry{Kind: session.Joined, Member: &session.Member{CallSign: "X", Device: "device E1", Place: "c"}}, "use a or b"},
		{"a move to a place taken", led.joined("E2"), session.Entry{Kind: session.Moved, Person: 2, Member: &session.Member{CallSign: "E2", Device: "device E1", Place: "a"}}, "is taken already"},
		{"nobody's move", led, session.Entry{Kind: session.Moved, Person: 2, Member: &session.Member{CallSign: "E2", Device: "d", Place: "a"}}, "nobody in this class"},
		{"a move to no phone", led, session.Entry{Kind: session.Moved, Person: 1, Member: &session.Member{CallSign: "E1"}}, "no device"},
		{"a move to no place", led, session.Entry{Kind: session.Moved, Person: 1, Member: &session.Member{CallSign: "E1", Device: "d", Place: "c"}}, "use a or b"},
		{"a move of one removed", led.then(session.Entry{Kind: session.Removed, Person: 1, On: true}), session.Entry{Kind: session.Moved, Person: 1, Member: &session.Member{CallSign: "E1", Device: "d", Place: "a"}}, "was removed"},
		{"a move after the end", led.then(session.Entry{Kind: session.Ended}), session.Entry{Kind: session.Moved, Person: 1, Member: &session.Member{CallSign: "E1", Device: "d", Place: "a"}}, "has ended"},
		{"a locked class", led.then(session.Entry{Kind: session.Locked, On: true}), session.Entry{Kind: session.Joined, Member: &session.Member{CallSign: "X", Device: "d", Place: "a"}}, "is locked"},
		{"a second answer", led.committed("s1", 1, 2), session.Entry{Kind: session.Committed, Person: 1, Scene: "s1", Answer: mark("f", 3)}, "the first one counts"},
		{"nobody's answer", led, session.Entry{Kind: session.Committed, Person: 2, Scene: "s1", Answer: mark("f", 3)}, "nobody in this class"},
		{"a doubt of nothing", led, session.Entry{Kind: session.Disagreed, Scene: "s1", Ask: "stage", On: true}, "none of this scene's questions"},
		{"an order with a hole", led, session.Entry{Kind: session.ScenesReordered, Order: []string{"s1", "s1"}}, "every scene once"},
		{"a step after the end", led.then(session.Entry{Kind: session.Ended}), session.Entry{Kind: session.Started}, "has ended"},
		{"somebody new after the end", led.then(session.Entry{Kind: session.Ended}), session.Entry{Kind: session.Joined, Member: &session.Member{CallSign: "X", Device: "d", Place: "a"}}, "has ended"},
		{"an unknown kind", led, session.Entry{Kind: "danced"}, "not a kind known here"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := c.log.play(t)
			after, err := session.Apply(s, next(s, c.e))
			var problem *engine.Problem
			require.ErrorAs(t, err, &problem)
			assert.Contains(t, err.Error(), c.says)
			assert.NotEmpty(t, problem.Do)
			assert.Equal(t, s, after, "a refused entry changes nothing")
		})
	}
	_, err := session.Apply(led.play(t), session.Entry{V: 1, Seq: 9, Kind: session.Ended})
	require.ErrorContains(t, err, "is 9 after 2")
}

// What arrives after the compare counts and is marked; what arrives after the
// end is not lost either.
func TestLateAnswersCountAndAreMarked(t *testing.T) {
	l := opened(session.Led, scene("s1", 0)).joined("E1", "E2", "E3").started(1).committed("s1", 1, 3).to(2, session.Commit, "s1").to(3, session.Compare, "s1").committed("s1", 2, 1)
	l = l.then(session.Entry{Kind: session.Ended}).committed("s1", 3, 2)
	s := l.play(t)
	for person, late := range map[int]bool{1: false, 2: true, 3: true} {
		mark, was := s.MarkOf("s1", person)
		require.NotNil(t, mark)
		assert.Equal(t, late, was, "person %d", person)
	}
	board := s.BoardView(nil)
	assert.Equal(t, 3, board.Scenes[0].Spread.Marks)
	assert.Equal(t, 2, board.Scenes[0].Spread.Late)
}

// Whoever moves to another phone keeps their number and what they committed; the
// old phone is nobody's any more. A locked class lets them.
func TestAPersonMovesToAnotherPhone(t *testing.T) {
	before := opened(session.Led, scene("s1", 0)).joined("E1", "E2").started(1).committed("s1", 1, 3).then(session.Entry{Kind: session.Locked, On: true})
	s := before.then(session.Entry{Kind: session.Moved, Person: 1, Member: &session.Member{CallSign: "E1", Device: "new", Place: "b", Seat: "x"}}).play(t)
	assert.Nil(t, s.Find("device E1", "a"))
	assert.Empty(t, s.PlaceViews("device E1"))
	assert.Equal(t, 1, s.Find("new", "b").Number)
	assert.Equal(t, []string{"s1"}, s.PlaceViews("new")[0].Committed)
	assert.Equal(t, 2, s.Present())
	was := before.play(t)
	assert.NotNil(t, was.Find("device E1", "a"), "the state before is as it was")
}

// A prediction sheet may be typed in when the class is long over.
func TestSheetsAreTakenAfterTheEnd(t *testing.T) {
	sheet := mark("", 2)
	sheet.Sheet = true
	s := opened(session.Led, scene("s1", 0)).joined("E1").then(session.Entry{Kind: session.Ended},
		session.Entry{Kind: session.Joined, Member: &session.Member{CallSign: "Rescue 4"}},
		session.Entry{Kind: session.Committed, Person: 2, Scene: "s1", Answer: sheet}).play(t)
	report := s.Report(nil)
	assert.Equal(t, 1, report.Scenes[0].Spread.Sheets)
	assert.Zero(t, report.Scenes[0].Spread.Late, "paper was filled in before")
}

// everything is one of each kind of entry, most of them out of place.
func everything() []session.Entry {
	list := []session.Entry{opened(session.Led, scene("s1", 20), scene("s2", 0))[0], opened(session.Self, scene("s1", 20))[0], {Kind: session.Started}, {Kind: session.LookUntimed},
		{Kind: session.LookExtended, AddS: 9}, {Kind: session.Undone}, {Kind: session.Ended}, {Kind: session.Locked, On: true}, {Kind: session.Locked}, {}, {Kind: "danced"},
		{Kind: session.Joined}, {Kind: session.Committed}, {Kind: session.SceneAdded}, {Kind: session.SceneAdded, Scenes: []session.Scene{scene("s3", 5)}},
		{Kind: session.ScenesReordered, Order: []string{"s2", "s1"}}, {Kind: session.ScenesReordered}, {Kind: session.Opened}}
	for _, id := range []string{"s1", "s2", "s9", ""} {
		for _, to := range []session.Step{session.Gather, session.Watch, session.Commit, session.Compare, session.Cutaway, session.Over, "x"} {
			list = append(list, session.Entry{Kind: session.Stepped, To: to, Scene: id})
		}
		list = append(list, session.Entry{Kind: session.Disagreed, Scene: id, Ask: "plane@door", On: true})
	}
	for person := range 4 {
		sign := "E" + strconv.Itoa(person)
		list = append(list, session.Entry{Kind: session.Removed, Person: person, On: true}, session.Entry{Kind: session.Renamed, Person: person, CallSign: sign + "x"},
			session.Entry{Kind: session.Joined, Member: &session.Member{CallSign: sign, Device: sign, Place: "a", Seat: sign}},
			session.Entry{Kind: session.Moved, Person: person, Member: &session.Member{CallSign: sign, Device: sign + " new", Place: "b"}},
			session.Entry{Kind: session.Committed, Person: person, Scene: "s1", Answer: mark("e", person)},
			session.Entry{Kind: session.Committed, Person: person, Scene: "s2", Answer: &session.Mark{}})
	}
	return list
}

// Entries in any order never panic, refuse or advance, and every view of every
// state can be drawn and spelled. LINTEL_SEED repeats a run.
func TestRandomOrdersNeverPanic(t *testing.T) {
	seed := rand.Uint64()
	if text := os.Getenv("LINTEL_SEED"); text != "" {
		var err error
		seed, err = strconv.ParseUint(text, 10, 64)
		require.NoError(t, err)
	}
	t.Logf("LINTEL_SEED=%d", seed)
	chance := rand.New(rand.NewPCG(seed, 1))
	list := everything()
	choices := []session.Choice{{Family: "family-s1", Cues: []string{"volume"}}, {Family: "other", Cues: []string{"volume", "neutral_plane"}}}
	reached := map[string]bool{}
	for range 400 {
		var s session.State
		var done []session.Entry
		for range 100 {
			e := next(s, list[chance.IntN(len(list))])
			e.AtMS = int64(chance.IntN(20_000))
			if len(done) == 0 && chance.IntN(2) == 0 {
				e = next(s, list[chance.IntN(2)])
			}
			after, err := session.Apply(s, e)
			if err != nil {
				require.Equal(t, s, after)
				continue
			}
			reached[string(e.Kind)] = true
			reached["step "+string(after.Step)] = true
			s, done = after, append(done, e)
		}
		for _, view := range []any{s.PhoneView(), s.ProjectorView(), s.BoardView(choices), s.Report(choices), s.PlaceViews("E1")} {
			_, err := json.Marshal(view)
			require.NoError(t, err)
		}
		var again session.State
		for _, e := range done {
			again = session.Settle(again, e)
		}
		require.Equal(t, s, again, "a log played twice leads to the same state")
	}
	for _, kind := range session.Kinds {
		assert.True(t, reached[string(kind)], "%s was never taken", kind)
	}
	for _, step := range []session.Step{session.Gather, session.Watch, session.Commit, session.Compare, session.Cutaway, session.Over} {
		assert.True(t, reached["step "+string(step)], "step %s was never reached", step)
	}
}

// An entry that a state holds changes nothing, and no state is changed by making
// the next one.
func TestReplayedEntriesChangeNothing(t *testing.T) {
	l := opened(session.Led, scene("s1", 20), scene("s2", 0)).joined("E1", "E2").started(1).committed("s1", 1, 2).committed("s1", 2, 4).
		to(2, session.Commit, "s1").to(3, session.Compare, "s1").then(session.Entry{Kind: session.Disagreed, Scene: "s1", Ask: "plane@door", On: true},
		session.Entry{Kind: session.Removed, Person: 2, On: true}, session.Entry{Kind: session.Undone, AtMS: 4}, session.Entry{Kind: session.ScenesReordered, Order: []string{"s2", "s1"}})
	states := []session.State{{}}
	var spelled []string
	spell := func(s session.State) string {
		text, err := json.Marshal([]any{s.BoardView(nil), s.PhoneView(), s.Report(nil)})
		require.NoError(t, err)
		return string(text)
	}
	for i := range l {
		l[i].V, l[i].Seq = session.Version, uint64(i+1)
		s, err := session.Apply(states[i], l[i])
		require.NoError(t, err)
		states, spelled = append(states, s), append(spelled, spell(s))
	}
	last := states[len(states)-1]
	for i := range l {
		again, err := session.Apply(last, l[i])
		require.NoError(t, err)
		assert.Equal(t, last, again)
		assert.Equal(t, spelled[i], spell(states[i+1]), "the state after entry %d is as it was", i+1)
	}
	// Two futures of one state do not see each other.
	one, err := session.Apply(states[3], next(states[3], session.Entry{Kind: session.Joined, Member: &session.Member{CallSign: "left"}}))
	require.NoError(t, err)
	other, err := session.Apply(states[3], next(states[3], session.Entry{Kind: session.Joined, Member: &session.Member{CallSign: "right"}}))
	require.NoError(t, err)
	assert.Equal(t, "left", one.People[2].CallSign)
	assert.Equal(t, "right", other.People[2].CallSign)
}
