package session

// BoardView is what the instructor sees: everyone, and how each scene was read.
// Who is connected is told apart, as no log holds it.
type BoardView struct {
	Head
	Scene   *Shown        `json:"scene"`
	UndoMS  int64         `json:"undo_until_ms"` // until when the last step may be taken back, 0 for none
	Scenes  []BoardScene  `json:"scenes"`
	People  []BoardPerson `json:"people"`
	Misread *Misread      `json:"misread"` // over the whole class so far
	Suggest *Suggestion   `json:"suggest"`
}

// BoardScene is a scene of the set with how it was read so far: the truth is
// there for the instructor at any time.
type BoardScene struct {
	Shown
	Title    string  `json:"title"`
	Note     string  `json:"note"`
	Revealed bool    `json:"revealed"`
	Doubts   []Doubt `json:"doubts"`
	Spread   *Spread `json:"spread"` // null before anyone committed
}

// BoardPerson is one line of the board.
type BoardPerson struct {
	Person    int      `json:"person"`
	CallSign  string   `json:"call_sign"`
	Device    bool     `json:"device"` // false for one whose sheets are typed in
	Place     string   `json:"place,omitempty"`
	Seat      string   `json:"seat,omitempty"`
	Removed   bool     `json:"removed"`
	Committed []string `json:"committed"`
	Late      int      `json:"late"`
	Score     *float64 `json:"score"` // mean over what was committed, doubted keys left out
}

// Misread is the cue that was read worst: over all its asks, how many were
// right, the mean error, and which way it was missed.
type Misread struct {
	Cue     string  `json:"cue"` // or the kind of ask where it is about no single cue
	Judged  int     `json:"judged"`
	Right   int     `json:"right"`
	MeanErr float64 `json:"mean_error"`
	Way     Way     `json:"way"`
}

// Way is in which direction a cue was missed.
type Way string

// The ways. A mean of half a step, chosen by us, is what counts as a direction.
const (
	TooHeavy Way = "too_heavy"
	TooLight Way = "too_light"
	Mixed    Way = "mixed"
)

// Choice is a family as the next scene is chosen from: the content's own.
type Choice struct {
	Family string   `json:"family"`
	Title  string   `json:"title"`
	Cues   []string `json:"cues"`
}

// Suggestion is the scene to take next, and the misread cue it is taken for.
type Suggestion struct {
	Family string `json:"family"`
	Title  string `json:"title"`
	Seed   uint64 `json:"seed"`
	Cue    string `json:"cue"`
	Way    Way    `json:"way"`
}

// BoardView is the instructor's view. choices are the families to choose the
// next scene from.
func (s *State) BoardView(choices []Choice) BoardView {
	view := BoardView{Head: s.head(), Scene: s.current(), Scenes: []BoardScene{}, People: []BoardPerson{}}
	if s.back != nil {
		view.UndoMS = s.backMS + UndoMS
	}
	for i := range s.Scenes {
		view.Scenes = append(view.Scenes, s.boardScene(i))
	}
	for _, p := range s.People {
		view.People = append(view.People, s.boardPerson(p))
	}
	view.Misread = s.misread()
	view.Suggest = s.suggest(view.Misread, choices)
	return view
}

func (s *State) boardScene(at int) BoardScene {
	scene := &s.Scenes[at]
	out := BoardScene{Shown: s.shown(at), Title: scene.Item.Title, Note: scene.Note, Revealed: s.revealed[scene.ID], Doubts: append([]Doubt{}, s.doubts[scene.ID]...)}
	if s.Committed(scene.ID) > 0 {
		out.Spread = s.spread(scene, true, true)
	}
	return out
}

func (s *State) boardPerson(p *Person) BoardPerson {
	out := BoardPerson{Person: p.Number, CallSign: p.CallSign, Device: p.Device != "", Place: p.Place, Seat: p.Seat, Removed: p.Removed, Committed: s.committedBy(p.Number)}
	sum, n := 0.0, 0
	for _, id := range out.Committed {
		mark, late := s.MarkOf(id, p.Number)
		out.Late += one(late)
		for i := range mark.Parts {
			if part := &mark.Parts[i]; !s.doubted(id, part.Ask) {
				sum += 1 - part.Error
				n++
			}
		}
	}
	if n > 0 {
		mean := sum / float64(n)
		out.Score = &mean
	}
	return out
}
