package session

import (
	"slices"

	"lintel/quiz"
)

// Report is what is kept of a class: how each scene and cue was read, what to
// repeat, and everybody's own line.
type Report struct {
	Head
	OpenMS  int64          `json:"opened_ms"`
	EndedMS int64          `json:"ended_ms"` // 0 while it goes on
	Scenes  []BoardScene   `json:"scenes"`
	Cues    []Misread      `json:"cues"`   // worst first
	Repeat  []Suggestion   `json:"repeat"` // what to take again, worst cue first
	People  []PersonReport `json:"people"`
}

// PersonReport is one person's class: their line of the board, and every part
// of every answer. It is private to them and their instructor.
type PersonReport struct {
	BoardPerson
	Bias    []Misread      `json:"bias"` // per cue, worst first
	Sure    *Sureness      `json:"sure"` // null where nothing was answered with a confidence
	Answers []PersonAnswer `json:"answers"`
}

// PersonAnswer is what one person committed to one scene.
type PersonAnswer struct {
	Scene      string       `json:"scene"`
	Late       bool         `json:"late"`
	Sheet      bool         `json:"sheet"`
	TookS      float64      `json:"took_s"`
	Confidence *float64     `json:"confidence"`
	Parts      []PersonPart `json:"parts"`
}

// PersonPart is one ask of it with what was true.
type PersonPart struct {
	PartMark
	Kind    quiz.AskKind `json:"kind"`
	Cue     string       `json:"cue"`
	Truth   []quiz.Reply `json:"truth"`
	Doubted bool         `json:"doubted"`
}

// maxRepeat is how many scenes a report proposes to take again (chosen by us).
const maxRepeat = 3

// Report is the class as it stands.
func (s *State) Report(choices []Choice) Report {
	out := Report{Head: s.head(), OpenMS: s.OpenMS, EndedMS: s.EndedMS, Scenes: []BoardScene{}, Cues: []Misread{}, People: []PersonReport{}}
	for i := range s.Scenes {
		out.Scenes = append(out.Scenes, s.boardScene(i))
	}
	for _, t := range s.cues() {
		out.Cues = append(out.Cues, t.misread())
	}
	out.Repeat = s.repeat(out.Cues, choices)
	for _, p := range s.People {
		out.People = append(out.People, s.personReport(p))
	}
	return out
}

// repeat proposes a scene for each cue that was misread, worst first, no family twice.
func (s *State) repeat(cues []Misread, choices []Choice) []Suggestion {
	out := []Suggestion{}
	for i := range cues {
		if cues[i].MeanErr < misreadFrom || len(out) == maxRepeat {
			continue
		}
		left := slices.DeleteFunc(slices.Clone(choices), func(c Choice) bool {
			return slices.ContainsFunc(out, func(had Suggestion) bool { return had.Family == c.Family })
		})
		if again := s.suggest(&cues[i], left); again != nil {
			out = append(out, *again)
		}
	}
	return out
}

// PersonReport is one person's part of the report, or nil.
func (s *State) PersonReport(person int) *PersonReport {
	p, err := s.person(person)
	if err != nil {
		return nil
	}
	out := s.personReport(p)
	return &out
}

func (s *State) personReport(p *Person) PersonReport {
	out := PersonReport{BoardPerson: s.boardPerson(p), Bias: []Misread{}, Answers: []PersonAnswer{}}
	for i := range s.Scenes {
		scene := &s.Scenes[i]
		mark, late := s.MarkOf(scene.ID, p.Number)
		if mark == nil {
			continue
		}
		answer := PersonAnswer{Scene: scene.ID, Late: late, Sheet: mark.Sheet, TookS: mark.TookS, Confidence: mark.Confidence, Parts: []PersonPart{}}
		for j := range scene.Item.Question.Asks {
			if part := partOf(mark, scene.Item.Question.Asks[j].ID); part != nil {
				answer.Parts = append(answer.Parts, PersonPart{PartMark: *part, Kind: scene.Item.Question.Asks[j].Kind, Cue: CueOf(&scene.Item.Question.Asks[j]), Truth: scene.Truth[j], Doubted: s.doubted(scene.ID, part.Ask)})
			}
		}
		out.Answers = append(out.Answers, answer)
	}
	out.Sure = sureness(out.Answers)
	for _, t := range tallyPerson(out.Answers) {
		out.Bias = append(out.Bias, t.misread())
	}
	return out
}
