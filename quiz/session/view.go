package session

import "lintel/quiz"

// Head is what every view begins with.
type Head struct {
	V         int    `json:"v"`
	Class     string `json:"class"`
	Title     string `json:"title"`
	Pace      Pace   `json:"pace"`
	Rehearsal bool   `json:"rehearsal"`
	Engine    string `json:"engine"` // update first when it is not yours
	Content   string `json:"content"`
	Step      Step   `json:"step"`
	Locked    bool   `json:"locked"`
}

// Shown is a scene as a phone or a projector needs it: it is made anew there
// from its family and seed, or from what was sketched. Times are of the server's clock, which every frame
// tells; LookUntil is 0 when the look has no end.
type Shown struct {
	ID        string    `json:"id"`
	Number    int       `json:"number"` // from 1
	Of        int       `json:"of"`
	Family    string    `json:"family"`
	Seed      uint64    `json:"seed"`
	Own       *quiz.Own `json:"own,omitempty"`
	LookS     int       `json:"look_s"`
	LookFrom  int64     `json:"look_from_ms"`
	LookUntil int64     `json:"look_until_ms"`
}

// PhoneView is what all phones of a class share. Scene is the one that everybody
// is at, or null; Scenes is the whole set in a self-paced class that has
// started, else empty. Compare holds no names.
type PhoneView struct {
	Head
	Scene   *Shown  `json:"scene"`
	Scenes  []Shown `json:"scenes"`
	Compare *Spread `json:"compare"`
}

// PlaceView is a phone's own part: one person on it.
type PlaceView struct {
	Place     string   `json:"place"`
	Person    int      `json:"person"`
	CallSign  string   `json:"call_sign"`
	Committed []string `json:"committed"` // ids of scenes
	Removed   bool     `json:"removed"`
}

// ProjectorView is what the room sees: never a name.
type ProjectorView struct {
	Head
	Scene     *Shown  `json:"scene"`
	People    int     `json:"people"`
	Committed int     `json:"committed"` // to the scene that everybody is at
	Compare   *Spread `json:"compare"`
}

// PhoneView is the view shared by every phone.
func (s *State) PhoneView() PhoneView {
	view := PhoneView{Head: s.head(), Scene: s.current(), Scenes: []Shown{}, Compare: s.compare(false)}
	if s.Class.Pace == Self && s.Step != Gather {
		for i := range s.Scenes {
			view.Scenes = append(view.Scenes, s.shown(i))
		}
	}
	return view
}

// PlaceViews are the people on one device.
func (s *State) PlaceViews(device string) []PlaceView {
	views := []PlaceView{}
	for _, p := range s.People {
		if device != "" && p.Device == device {
			views = append(views, PlaceView{Place: p.Place, Person: p.Number, CallSign: p.CallSign, Committed: s.committedBy(p.Number), Removed: p.Removed})
		}
	}
	return views
}

// ProjectorView is the view for the wall.
func (s *State) ProjectorView() ProjectorView {
	return ProjectorView{Head: s.head(), Scene: s.current(), People: s.Present(), Committed: s.Committed(s.Scene), Compare: s.compare(false)}
}

func (s *State) head() Head {
	c := &s.Class
	return Head{V: Version, Class: c.ID, Title: c.Title, Pace: c.Pace, Rehearsal: c.Rehearsal, Engine: c.Engine, Content: c.Content, Step: s.Step, Locked: s.Locked}
}

// current is the scene that everybody is at, or nil.
func (s *State) current() *Shown {
	_, at := s.SceneOf(s.Scene)
	if at < 0 {
		return nil
	}
	shown := s.shown(at)
	shown.LookFrom, shown.LookUntil = s.LookFrom, s.LookUntil
	return &shown
}

func (s *State) shown(at int) Shown {
	scene := &s.Scenes[at]
	return Shown{ID: scene.ID, Number: at + 1, Of: len(s.Scenes), Family: scene.Family, Seed: scene.Seed, Own: scene.Own, LookS: scene.LookS}
}

// compare is the spread of the current scene once it is shown; named adds who
// gave what.
func (s *State) compare(named bool) *Spread {
	if !s.shows() {
		return nil
	}
	scene, _ := s.SceneOf(s.Scene)
	if scene == nil {
		return nil
	}
	return s.spread(scene, s.Step == Cutaway, named)
}

func (s *State) committedBy(person int) []string {
	ids := []string{}
	for i := range s.Scenes {
		if mark, _ := s.MarkOf(s.Scenes[i].ID, person); mark != nil {
			ids = append(ids, s.Scenes[i].ID)
		}
	}
	return ids
}
