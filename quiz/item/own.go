package item

import (
	"slices"
	"sort"
	"strconv"

	"lintel/engine"
	"lintel/engine/cue"
	"lintel/engine/sim"
	"lintel/quiz"
)

// ownBeforeS is how long before its moment a call on a scene of one's own tells of
// the smoke, s: as long as the families do.
const ownBeforeS = 60

// ownAsks is what each kind asks.
var ownAsks = map[quiz.ItemKind][]Ask{
	quiz.ReadOpening: {
		{Kind: quiz.AskLevel, Cue: engine.CueVolume}, {Kind: quiz.AskLevel, Cue: engine.CueVelocity},
		{Kind: quiz.AskLevel, Cue: engine.CueDensity}, {Kind: quiz.AskLevel, Cue: engine.CueDarkness},
	},
	quiz.FlowPlane:   {{Kind: quiz.AskFlow}, {Kind: quiz.AskPlane}},
	quiz.NearestSeat: {{Kind: quiz.AskOpening}},
	quiz.CallStage:   {{Kind: quiz.AskStage}, {Kind: quiz.AskRegime}},
}

// Own makes the item of a scene that an instructor sketched, with its truth. It is
// a family of one scene and one moment: what lies too near another answer to be
// fair is not asked, and a scene that leaves nothing to ask is refused.
func Own(own *quiz.Own, seed uint64, lib sim.Library) (quiz.Item, Truth, error) {
	if err := own.Check("own"); err != nil {
		return quiz.Item{}, Truth{}, err
	}
	f := ownFamily(own)
	run, err := sim.New(f.Scene, lib)
	if err != nil {
		return quiz.Item{}, Truth{}, err
	}
	w := &walk{scene: &f.Scene, run: run}
	if f.BeforeS > 0 {
		w.shown = f.Show
	}
	if err := w.to(own.MomentS); err != nil {
		return quiz.Item{}, Truth{}, err
	}
	truth, err := f.ownTruth(w)
	if err != nil {
		return quiz.Item{}, Truth{}, err
	}
	if truth == nil {
		return quiz.Item{}, Truth{}, engine.Bad("own", "leaves nothing fair to ask after "+strconv.Itoa(int(own.MomentS))+" s: every answer lies too near another, or nothing seen from outside tells it", "choose another moment, opening or question")
	}
	scene := &made{scene: f.Scene, moment: own.MomentS, truth: truth}
	item := f.item(seed, scene)
	item.Title = own.Title
	item.Question.Text = engine.Sentences(f.hidden(standingAt(f.Scene, own.MomentS)), truth.before, ownText(own))
	return item, *truth, nil
}

// ownFamily is the family of one scene. What is done after the moment is left out.
func ownFamily(own *quiz.Own) *Family {
	f := &Family{ID: quiz.OwnFamily, Kind: own.Kind, Scene: own.Scenario, Show: own.Outer()}
	f.Scene.Moves = slices.DeleteFunc(slices.Clone(own.Scenario.Moves), func(m engine.Move) bool { return m.TS > own.MomentS })
	if own.AsksOne() {
		f.Show = []string{own.Opening}
	}
	if own.Kind == quiz.CallStage {
		f.BeforeS = ownBeforeS
	}
	for _, ask := range ownAsks[own.Kind] {
		ask.Opening = own.Opening
		f.Asks = append(f.Asks, ask)
	}
	return f
}

// ownTruth judges every ask and keeps those that are fair; nil where none is. The
// openings come in the order in which smoke catches the eye, and where the nearest
// is asked for only those at which it shows.
func (f *Family) ownTruth(w *walk) (*Truth, error) {
	if f.Kind == quiz.CallStage && !plain(w.run.Stage(), w.run.Regime()) {
		return nil, nil
	}
	before, told, err := f.before(w)
	if err != nil || !told {
		return nil, err
	}
	if err := f.orderShown(w); err != nil {
		return nil, err
	}
	j := judgement{family: f, walk: w, margin: 1}
	var fair []Ask
	for _, ask := range f.Asks {
		accept, margin, err := j.ask(ask)
		if err != nil {
			return nil, err
		}
		if accept == nil || margin < ask.least() {
			continue
		}
		fair, j.accept, j.margin = append(fair, ask), append(j.accept, accept), min(j.margin, margin)
	}
	if fair == nil {
		return nil, nil
	}
	f.Asks = fair
	truth := truthAt(w.run, j.accept, j.margin)
	truth.before = before
	return truth, nil
}

func (f *Family) orderShown(w *walk) error {
	ratings := map[string]cue.Rating{}
	for _, id := range f.Show {
		rating, err := w.rate(w.run, id)
		if err != nil {
			return err
		}
		ratings[id] = rating
	}
	volume := func(id string) float64 {
		rating := ratings[id]
		return measureOf(engine.CueVolume, &rating)
	}
	f.Show = slices.Clone(f.Show)
	sort.SliceStable(f.Show, func(i, j int) bool { return volume(f.Show[i]) > volume(f.Show[j]) })
	if f.Kind == quiz.NearestSeat {
		f.Show = slices.DeleteFunc(f.Show, func(id string) bool { return volume(id) <= 0 })
	}
	return nil
}

// standingAt is a scene with every opening as it stands at a moment.
func standingAt(scene engine.Scenario, moment float64) *engine.Scenario {
	scene.Openings = slices.Clone(scene.Openings)
	for _, move := range scene.Moves {
		at := slices.IndexFunc(scene.Openings, func(o engine.Opening) bool { return move.Opening == o.ID })
		if at >= 0 && move.TS <= moment {
			scene.Openings[at].Open = move.Open
		}
	}
	return &scene
}

// ownText says what is asked, by kind.
func ownText(own *quiz.Own) string {
	if own.AsksOne() {
		return engine.Sentence("own/"+string(own.Kind), engine.Slot("opening", nameOf(own.Opening)))
	}
	return engine.Sentence("own/" + string(own.Kind))
}
