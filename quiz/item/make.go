package item

import (
	"math/rand/v2"
	"strconv"

	"lintel/engine"
	"lintel/engine/sim"
	"lintel/quiz"
)

const (
	// tries is how many scenes of one seed are looked through. Chosen by us.
	tries = 24
	// fairMargin is the least cut margin of a scene that may be asked. A person
	// judges intensity to about a tenth (see changeRatio); chosen by us.
	fairMargin = 0.1
	// fairDarkness is the same for darkness, which ends at black: all its levels
	// lie within a few tenths of each other. Chosen by us.
	fairDarkness = 0.04
	// lookEveryS is how far apart the moments lie that are tried in one scene,
	// and farLookEveryS where each takes running the fire on to see.
	lookEveryS    = 4
	farLookEveryS = 12
	// fairLooks is how many moments are compared once one is fair, so that
	// scenes do not crowd at the least margin.
	fairLooks = 3
	// watchS is how long a scene may be watched on from its moment.
	watchS = 60
	// largestSeed is the last whole number that a script can count to exactly
	// (ECMA-262, Number.MAX_SAFE_INTEGER).
	largestSeed = 1<<53 - 1
)

// Make returns the item of a family and a seed, with its truth. The same
// arguments give the same item on every machine. Contrast is for a which_of_two
// family alone, which without one draws one of its own. The item's Content is left
// for the caller, who knows which content the family came from.
func Make(f *Family, seed uint64, contrast *quiz.Contrast, lib sim.Library) (quiz.Item, Truth, error) {
	if seed > largestSeed {
		return quiz.Item{}, Truth{}, engine.Bad("seed", "is "+strconv.FormatUint(seed, 10), "give a whole number up to "+strconv.Itoa(largestSeed))
	}
	if contrast != nil && !f.offers(*contrast) {
		return quiz.Item{}, Truth{}, engine.Bad("contrast", "is none that the family "+f.ID+" can show", "give one of its pairs, or none")
	}
	test := seed >= quiz.FirstTestSeed
	for try := range f.tries(contrast) {
		draw := rand.New(rand.NewPCG(seed, hash(f.ID)+try))
		found, err := f.find(draw, contrast, lib, test)
		if err != nil {
			return quiz.Item{}, Truth{}, err
		}
		if found != nil {
			if len(f.Lights) > 0 {
				found.light = f.Lights[draw.IntN(len(f.Lights))]
			}
			return f.item(seed, found), *found.truth, nil
		}
	}
	return quiz.Item{}, Truth{}, engine.Bad("family "+f.ID, "has no fair scene for seed "+strconv.FormatUint(seed, 10), "widen its ranges or its moment")
}

// tries is how often a seed is searched anew. A pair's own search draws as many
// scenes each time; anew, it draws another contrast unless one was given.
func (f *Family) tries(contrast *quiz.Contrast) uint64 {
	switch {
	case f.Kind != quiz.WhichOfTwo:
		return tries
	case contrast == nil:
		return 3
	}
	return 1
}

// made is a scene that was found fair, with its moment and its truth.
type made struct {
	scene  engine.Scenario
	moment float64
	truth  *Truth

	watch    *quiz.Span     // of a report
	second   *quiz.Moment   // of a pair
	contrast *quiz.Contrast // of a pair
	wanted   int            // which side of the contrast is asked for
	light    quiz.Light
}

// find draws a scene and looks in it for what the family asks about; nil where it
// holds nothing fair.
func (f *Family) find(draw *rand.Rand, contrast *quiz.Contrast, lib sim.Library, test bool) (*made, error) {
	if f.Kind == quiz.WhichOfTwo {
		own := f.Pairs[draw.IntN(len(f.Pairs))]
		if contrast == nil {
			contrast = &own
		}
		return f.pair(draw, *contrast, lib, test)
	}
	scene, err := f.scene(draw)
	if err != nil {
		return nil, err
	}
	if f.Kind == quiz.CallOut {
		return f.report(scene, draw, lib, test)
	}
	return f.search(scene, draw, lib, test)
}

// search runs a scene through the family's window, from a drawn moment on, and
// returns the fairest of the first few moments that are fair to ask about, or nil.
func (f *Family) search(scene engine.Scenario, draw *rand.Rand, lib sim.Library, test bool) (*made, error) {
	run, err := sim.New(scene, lib)
	if err != nil {
		return nil, err
	}
	walk := walk{scene: &scene, run: run, test: test}
	if f.BeforeS > 0 || f.GapS > 0 {
		walk.shown = f.Show
	}
	var best *Truth
	var at float64
	looks := fairLooks
	span := int(f.Moment.ToS - f.Moment.FromS)
	for moment := f.Moment.FromS + float64(draw.IntN(span+1)); moment <= f.Moment.ToS && looks > 0; moment += f.stride() {
		if err := walk.to(moment); err != nil {
			return nil, err
		}
		truth, err := f.judge(&walk)
		if err != nil {
			return nil, err
		}
		if truth != nil && (best == nil || truth.CutMargin > best.CutMargin) {
			best, at = truth, moment
		}
		if best != nil {
			looks--
		}
		if test && best != nil {
			break // a test takes what comes, near a cut point or not
		}
	}
	if best == nil {
		return nil, nil
	}
	return &made{scene: scene, moment: at, truth: best}, nil
}

func (f *Family) stride() float64 {
	if f.Kind == quiz.CallStage || f.Move != nil {
		return farLookEveryS
	}
	return lookEveryS
}

func (f *Family) item(seed uint64, m *made) quiz.Item {
	scene := m.scene
	scene.Name = ""
	scene.EndS = m.moment + watchS
	if f.Move != nil {
		scene.EndS += f.Move.AfterS
	}
	if m.watch != nil {
		scene.EndS = m.watch.ToS + watchS
	}
	made := quiz.Item{
		V: 1, Engine: engine.Version, Family: f.ID, Seed: seed, Contrast: m.contrast,
		MomentS: m.moment, Kind: f.Kind, Title: f.Words("title"), Scenario: scene, Show: f.Show, Light: m.light,
		Second: m.second, Watch: m.watch, Question: f.question(m),
	}
	if f.GapS > 0 {
		made.LookS = []float64{m.moment - f.GapS, m.moment}
	}
	return made
}

// hash spreads the letters of a name over 64 bits (FNV-1a, with the constants
// of IETF draft-eastlake-fnv), so that two families never share a scene.
func hash(name string) uint64 {
	sum := uint64(0xcbf29ce484222325)
	for i := range len(name) {
		sum = (sum ^ uint64(name[i])) * 0x100000001b3
	}
	return sum
}
