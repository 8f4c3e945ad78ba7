package session

import (
	"slices"
	"strconv"

	"lintel/engine"
	"lintel/quiz"
)

// Spread is how a class read one scene: ask by ask, with the ask that was read
// worst. Marks that are removed with their person do not count.
type Spread struct {
	Scene  string      `json:"scene"`
	Asks   []AskSpread `json:"asks"`
	Worst  string      `json:"worst,omitempty"` // the ask with the highest mean error, where the truth is shown
	Marks  int         `json:"marks"`           // how many committed
	Late   int         `json:"late"`            // of them after the compare began
	Sheets int         `json:"sheets"`          // of them typed in from paper
}

// AskSpread is the answers to one ask. Counts follow the ask's own order, with
// every value that could have been given. A plane has none, and Planes lists what
// was given, lowest first; so does Moments for the seconds of a report. Truth and the figures that depend on it are
// there once the truth is shown.
type AskSpread struct {
	Ask      quiz.Ask     `json:"ask"`
	Counts   []Count      `json:"counts"`
	Planes   []float64    `json:"planes"`
	Moments  []float64    `json:"moments,omitempty"`
	Unsure   int          `json:"unsure"`
	Apart    *Apart       `json:"apart"` // the two readings that disagree most
	Doubted  bool         `json:"doubted"`
	Truth    []quiz.Reply `json:"truth,omitempty"`
	Right    int          `json:"right"`
	Judged   int          `json:"judged"`               // answers that were given at all, "cannot tell" too
	MeanErr  float64      `json:"mean_error"`           // 0 to 1
	MeanStep *float64     `json:"mean_steps,omitempty"` // positive reads too heavy
}

// Count is how many gave one value.
type Count struct {
	Value string `json:"value"`
	N     int    `json:"n"`
}

// Apart is the two readings that lie furthest from each other, as values, with
// how many gave each. Who they are is for the board alone.
type Apart struct {
	Low    string `json:"low"`
	High   string `json:"high"`
	LowN   int    `json:"low_n"`
	HighN  int    `json:"high_n"`
	LowBy  []int  `json:"low_by,omitempty"` // persons
	HighBy []int  `json:"high_by,omitempty"`
}

// Value spells what a reply gives as one word: a level as its digit, a plane in
// hundredths, a moment in whole seconds. It is empty for "cannot tell".
func Value(r *quiz.Reply) string {
	switch {
	case r.Unsure:
		return ""
	case r.Level != nil:
		return strconv.Itoa(*r.Level)
	case r.Plane != nil:
		return strconv.FormatFloat(*r.Plane, 'f', 2, 64)
	case r.AtS != nil:
		return strconv.FormatFloat(*r.AtS, 'f', 0, 64)
	case r.Quiet:
		return Quiet
	}
	// Of what is left exactly one is set.
	return string(r.Flow) + string(r.Stage) + string(r.Regime) + string(r.Change) + r.Opening + string(r.Trend) + string(r.Pick)
}

// Quiet is the value of a watch in which nothing was reported.
const Quiet = "quiet"

// scale lists the values of an ask in order, where they are few.
func scale(item *quiz.Item, kind quiz.AskKind) []string {
	switch kind {
	case quiz.AskOpening:
		return item.Show
	case quiz.AskTrend:
		return []string{string(quiz.Better), string(quiz.Steady), string(quiz.Worse)}
	case quiz.AskPick:
		return []string{string(quiz.First), string(quiz.Second)}
	case quiz.AskMoment:
		return []string{Quiet}
	case quiz.AskLevel:
		var levels []string
		for level := range engine.TopLevel + 1 {
			levels = append(levels, strconv.Itoa(level))
		}
		return levels
	case quiz.AskFlow:
		return words(engine.Flows)
	case quiz.AskStage:
		return words(engine.Stages)
	case quiz.AskRegime:
		return []string{string(engine.FuelLimited), string(engine.VentilationLimited)}
	case quiz.AskChange:
		return []string{string(quiz.Less), string(quiz.Same), string(quiz.More)}
	}
	return nil
}

func words[T ~string](list []T) []string {
	var out []string
	for _, word := range list {
		out = append(out, string(word))
	}
	return out
}

// spread gathers the marks of a scene.
func (s *State) spread(scene *Scene, truth, named bool) *Spread {
	out := &Spread{Scene: scene.ID}
	for i := range scene.Item.Question.Asks {
		out.Asks = append(out.Asks, s.askSpread(scene, i, truth, named))
	}
	for i, mark := range s.marks[scene.ID] {
		if mark == nil || s.People[i].Removed {
			continue
		}
		out.Marks++
		out.Late += one(s.late[scene.ID][i])
		out.Sheets += one(mark.Sheet)
	}
	if truth {
		out.Worst = worst(out.Asks)
	}
	return out
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// worst is the ask with the highest mean error, doubted keys left out.
func worst(asks []AskSpread) string {
	most, id := 0.0, ""
	for i := range asks {
		if a := &asks[i]; !a.Doubted && a.Judged > 0 && a.MeanErr > most {
			most, id = a.MeanErr, a.Ask.ID
		}
	}
	return id
}

// given is one person's mark of an ask.
type given struct {
	person int
	part   *PartMark
}

// gather lists what was given to an ask by those who are still there.
func (s *State) gather(scene, ask string) []given {
	var all []given
	for i, mark := range s.marks[scene] {
		if mark == nil || s.People[i].Removed {
			continue
		}
		if part := partOf(mark, ask); part != nil {
			all = append(all, given{i + 1, part})
		}
	}
	return all
}

// partOf is the part of a mark that answers an ask, or nil.
func partOf(mark *Mark, ask string) *PartMark {
	at := slices.IndexFunc(mark.Parts, func(p PartMark) bool { return p.Ask == ask })
	if at < 0 {
		return nil
	}
	return &mark.Parts[at]
}

func (s *State) askSpread(scene *Scene, at int, truth, named bool) AskSpread {
	ask := scene.Item.Question.Asks[at]
	all := s.gather(scene.ID, ask.ID)
	out := AskSpread{Ask: ask, Counts: []Count{}, Planes: []float64{}, Doubted: s.doubted(scene.ID, ask.ID), Apart: apart(&scene.Item, ask.Kind, all, named)}
	for _, value := range scale(&scene.Item, ask.Kind) {
		out.Counts = append(out.Counts, Count{Value: value})
	}
	for _, g := range all {
		out.add(&g.part.Given)
	}
	slices.Sort(out.Planes)
	slices.Sort(out.Moments)
	if truth {
		out.Truth = scene.Truth[at]
		out.judge(all)
	}
	return out
}

func (a *AskSpread) add(r *quiz.Reply) {
	value := Value(r)
	switch {
	case value == "":
		a.Unsure++
	case r.Plane != nil:
		a.Planes = append(a.Planes, *r.Plane)
	case r.AtS != nil:
		a.Moments = append(a.Moments, *r.AtS)
	default:
		at := slices.IndexFunc(a.Counts, func(c Count) bool { return c.Value == value })
		if at < 0 {
			a.Counts, at = append(a.Counts, Count{Value: value}), len(a.Counts)
		}
		a.Counts[at].N++
	}
}

func (a *AskSpread) judge(all []given) {
	steps, stepped := 0, 0
	for _, g := range all {
		a.Judged++
		a.MeanErr += g.part.Error
		a.Right += one(g.part.Right)
		if g.part.Steps != nil {
			steps += *g.part.Steps
			stepped++
		}
	}
	if a.Judged > 0 {
		a.MeanErr /= float64(a.Judged)
	}
	if stepped > 0 {
		mean := float64(steps) / float64(stepped)
		a.MeanStep = &mean
	}
}
