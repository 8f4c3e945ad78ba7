package session

import "slices"

// State is a class after some number of entries. The zero value is a class
// before its first. Read it; only Apply makes one.
type State struct {
	Seq     uint64
	Class   Class
	OpenMS  int64 // when it was opened, and ended
	EndedMS int64
	Point
	Locked bool
	Scenes []Scene   // in the order they are worked in
	People []*Person // person n stands at n-1; the removed stay

	marks    map[string][]*Mark // scene -> by person, nil where nothing is committed
	late     map[string][]bool  // scene -> by person, committed after the compare began
	revealed map[string]bool    // scenes whose spread has been shown
	doubts   map[string][]Doubt // scene -> asks whose key the instructor doubts
	back     *Point             // where Undone leads
	backMS   int64              // when that was left
	backSeen string             // the scene that the step revealed, hidden again by Undone
}

// Point is where a class stands: a step, a scene, and the time to look.
type Point struct {
	Step      Step
	Scene     string
	LookFrom  int64 // ms, when the look began
	LookUntil int64 // ms, 0 when it has no end
}

// Person is one who joined.
type Person struct {
	Number int
	Member
	JoinedMS int64
	Removed  bool
}

// Doubt is an ask whose key the instructor disagrees with: it is kept out of
// every score and shown in the report.
type Doubt struct {
	Ask  string `json:"ask"`
	By   string `json:"by"`
	Note string `json:"note"`
}

// Find returns the person at a place of a device, or nil.
func (s *State) Find(device, place string) *Person {
	for _, p := range s.People {
		if device != "" && p.Device == device && p.Place == place {
			return p
		}
	}
	return nil
}

// Seated returns the person on a place of the roster, or nil.
func (s *State) Seated(seat string) *Person {
	for _, p := range s.People {
		if seat != "" && p.Seat == seat && !p.Removed {
			return p
		}
	}
	return nil
}

// Present counts the people who have not been removed.
func (s *State) Present() int {
	n := 0
	for _, p := range s.People {
		if !p.Removed {
			n++
		}
	}
	return n
}

// SceneOf returns a scene and its place in the order, or nil.
func (s *State) SceneOf(id string) (scene *Scene, at int) {
	at = slices.IndexFunc(s.Scenes, func(scene Scene) bool { return scene.ID == id })
	if at < 0 {
		return nil, -1
	}
	return &s.Scenes[at], at
}

// MarkOf returns what a person committed to a scene, or nil, and whether it came
// after the compare began.
func (s *State) MarkOf(scene string, person int) (mark *Mark, late bool) {
	marks := s.marks[scene]
	if person < 1 || person > len(marks) || marks[person-1] == nil {
		return nil, false
	}
	return marks[person-1], s.late[scene][person-1]
}

// Doubts lists the asks of a scene whose key the instructor doubts.
func (s *State) Doubts(scene string) []Doubt { return s.doubts[scene] }

func (s *State) doubted(scene, ask string) bool {
	return slices.ContainsFunc(s.doubts[scene], func(d Doubt) bool { return d.Ask == ask })
}

// Committed counts the people who committed to a scene and are still there.
func (s *State) Committed(scene string) int {
	n := 0
	for i, mark := range s.marks[scene] {
		if mark != nil && !s.People[i].Removed {
			n++
		}
	}
	return n
}
