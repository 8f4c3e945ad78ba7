package session

import (
	"maps"
	"slices"
	"strconv"

	"lintel/engine"
	"lintel/quiz"
)

// Apply takes a class one entry on. An entry that the state already holds
// changes nothing. One that does not follow, or that the class does not allow,
// is refused with an *engine.Problem and the state comes back as it was. To ask
// whether an entry would be allowed, give it the next Seq and drop the result.
func Apply(s State, e Entry) (State, error) {
	if e.Seq != 0 && e.Seq <= s.Seq {
		return s, nil
	}
	if e.V != Version {
		return s, engine.Bad("v", "is "+strconv.Itoa(e.V), "read this class with a newer version")
	}
	if e.Seq != s.Seq+1 {
		return s, engine.Bad("seq", "is "+strconv.FormatUint(e.Seq, 10)+" after "+strconv.FormatUint(s.Seq, 10), "read the log from the entry that is missing")
	}
	next := s
	if err := next.take(e); err != nil {
		return s, err
	}
	next.Seq = e.Seq
	return next, nil
}

// Settle is Apply for an entry that stands in the log for good: where the class
// would refuse it, it counts as read and changes nothing else.
func Settle(s State, e Entry) State {
	next, err := Apply(s, e)
	if err != nil && e.Seq == s.Seq+1 {
		next.Seq = e.Seq
	}
	return next
}

func (s *State) take(e Entry) error {
	if (s.Seq == 0) != (e.Kind == Opened) {
		return engine.Bad("kind", "is "+string(e.Kind), "begin a class with opened, once")
	}
	switch e.Kind {
	case Opened:
		return s.open(e)
	case Joined:
		return s.join(e)
	case Moved:
		return s.movePerson(e)
	case Renamed, Removed:
		return s.changePerson(e)
	case Started, Stepped, LookExtended, LookUntimed, Undone, Ended:
		return s.move(e)
	case Committed:
		return s.commit(e)
	case Disagreed:
		return s.disagree(e)
	case SceneAdded:
		return s.addScene(e)
	case ScenesReordered:
		return s.reorder(e)
	case Locked:
		s.Locked = e.On
		return s.stillOpen()
	}
	return engine.Bad("kind", "is not a kind known here", "use "+engine.OneOf(Kinds))
}

func (s *State) open(e Entry) error {
	if e.Class == nil || len(e.Scenes) == 0 || len(e.Scenes) > MaxScenes {
		return engine.Bad("scenes", "are none or too many", "give 1 to "+strconv.Itoa(MaxScenes))
	}
	if e.Class.Pace != Led && e.Class.Pace != Self {
		return engine.Bad("pace", "is not a pace", "use led or self")
	}
	s.Class, s.OpenMS, s.Scenes = *e.Class, e.AtMS, slices.Clone(e.Scenes)
	s.Point = Point{Step: Gather}
	return nil
}

func (s *State) stillOpen() error {
	if s.Step == Over {
		return engine.Bad("class", "has ended", "open another")
	}
	return nil
}

// join takes somebody in. One whose sheets are typed in from paper has no device,
// and may come in after the end.
func (s *State) join(e Entry) error {
	m := e.Member
	switch {
	case m == nil || m.CallSign == "":
		return engine.Bad("member", "has no call sign", "say who joins")
	case m.Device != "" && s.Step == Over:
		return s.stillOpen()
	case len(s.People) >= MaxPeople:
		return engine.Bad("class", "is full", "open another")
	case m.Device != "" && s.Locked:
		return engine.Bad("class", "is locked", "ask the instructor to unlock it")
	case m.Device != "" && m.Place != FirstPlace && m.Place != SecondPlace:
		return engine.Bad("place", "is not a place on a phone", "use a or b")
	case m.Device != "" && s.Find(m.Device, m.Place) != nil:
		return engine.Bad("place", "is taken already", "carry on as the one who joined")
	case s.Seated(m.Seat) != nil:
		return engine.Bad("seat", "is taken already", "remove the one who joined first")
	}
	s.People = append(slices.Clip(s.People), &Person{Number: len(s.People) + 1, Member: *m, JoinedMS: e.AtMS})
	return nil
}

// movePerson puts somebody on another phone. A class that is locked lets them: they
// are in it already.
func (s *State) movePerson(e Entry) error {
	known, err := s.person(e.Person)
	m := e.Member
	switch {
	case err != nil:
		return err
	case s.Step == Over:
		return s.stillOpen()
	case m == nil || m.CallSign == "" || m.Device == "":
		return engine.Bad("member", "has no call sign or no device", "say who moves, and where to")
	case m.Place != FirstPlace && m.Place != SecondPlace:
		return engine.Bad("place", "is not a place on a phone", "use a or b")
	case known.Removed:
		return engine.Bad("person", "was removed", "let them back in first")
	case s.Find(m.Device, m.Place) != nil:
		return engine.Bad("place", "is taken already", "carry on as the one who joined")
	}
	changed := *known
	changed.Member = *m
	s.People = slices.Clone(s.People)
	s.People[e.Person-1] = &changed
	return nil
}

func (s *State) person(n int) (*Person, error) {
	if n < 1 || n > len(s.People) {
		return nil, engine.Bad("person", "is nobody in this class", "name one who joined")
	}
	return s.People[n-1], nil
}

func (s *State) changePerson(e Entry) error {
	known, err := s.person(e.Person)
	if err != nil {
		return err
	}
	changed := *known
	if e.Kind == Renamed {
		if e.CallSign == "" {
			return engine.Bad("call_sign", "is empty", "give a call sign")
		}
		changed.CallSign = e.CallSign
	} else {
		changed.Removed = e.On
	}
	s.People = slices.Clone(s.People)
	s.People[e.Person-1] = &changed
	return nil
}

// commit takes the first answer of a person to a scene. It is taken at any time,
// even after the end: a phone that was cut off sends what it holds later.
func (s *State) commit(e Entry) error {
	if _, err := s.person(e.Person); err != nil {
		return err
	}
	if scene, _ := s.SceneOf(e.Scene); scene == nil || e.Answer == nil {
		return engine.Bad("scene", "is not one of this class", "commit to a scene of the class")
	}
	if held, _ := s.MarkOf(e.Scene, e.Person); held != nil {
		return engine.Bad("answer", "has been committed already", "the first one counts")
	}
	s.marks = maps.Clone(grown(s.marks))
	s.late = maps.Clone(grown(s.late))
	s.marks[e.Scene] = put(s.marks[e.Scene], e.Person, len(s.People), e.Answer)
	s.late[e.Scene] = put(s.late[e.Scene], e.Person, len(s.People), s.revealed[e.Scene] && !e.Answer.Sheet)
	return nil
}

// put copies a list of one value a person and sets one.
func put[T any](list []T, person, people int, value T) []T {
	next := make([]T, people)
	copy(next, list)
	next[person-1] = value
	return next
}

// grown is a map that may be written to.
func grown[K comparable, V any](m map[K]V) map[K]V {
	if m == nil {
		return map[K]V{}
	}
	return m
}

func (s *State) disagree(e Entry) error {
	scene, _ := s.SceneOf(e.Scene)
	if scene == nil {
		return engine.Bad("scene", "is not one of this class", "name a scene of the class")
	}
	if !slices.ContainsFunc(scene.Item.Question.Asks, func(a quiz.Ask) bool { return a.ID == e.Ask }) {
		return engine.Bad("ask", "is none of this scene's questions", "name one of its asks")
	}
	kept := slices.DeleteFunc(slices.Clone(s.doubts[e.Scene]), func(d Doubt) bool { return d.Ask == e.Ask })
	if e.On {
		kept = append(kept, Doubt{Ask: e.Ask, By: e.By, Note: e.Note})
	}
	s.doubts = maps.Clone(grown(s.doubts))
	s.doubts[e.Scene] = kept
	return nil
}
