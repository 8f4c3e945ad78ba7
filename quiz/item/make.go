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
// arguments give the same item on every machine. The item's Content is left for
// the caller, who knows which content the family came from.
func Make(f *Family, seed uint64, lib sim.Library) (quiz.Item, Truth, error) {
	if seed > largestSeed {
		return quiz.Item{}, Truth{}, engine.Bad("seed", "is "+strconv.FormatUint(seed, 10), "give a whole number up to "+strconv.Itoa(largestSeed))
	}
	for try := range uint64(tries) {
		draw := rand.New(rand.NewPCG(seed, hash(f.ID)+try))
		scene, err := f.scene(draw)
		if err != nil {
			return quiz.Item{}, Truth{}, err
		}
		moment, truth, err := f.search(scene, draw, lib)
		if err != nil {
			return quiz.Item{}, Truth{}, err
		}
		if truth != nil {
			return f.item(seed, scene, moment, truth.before), *truth, nil
		}
	}
	return quiz.Item{}, Truth{}, engine.Bad("family "+f.ID, "has no fair scene for seed "+strconv.FormatUint(seed, 10), "widen its ranges or its moment")
}

// search runs a scene through the family's window, from a drawn moment on, and
// returns the fairest of the first few moments that are fair to ask about, or a
// nil truth.
func (f *Family) search(scene engine.Scenario, draw *rand.Rand, lib sim.Library) (float64, *Truth, error) {
	run, err := sim.New(scene, lib)
	if err != nil {
		return 0, nil, err
	}
	walk := walk{scene: &scene, run: run}
	if f.BeforeS > 0 {
		walk.shown = f.Show
	}
	var best *Truth
	var at float64
	looks := fairLooks
	span := int(f.Moment.ToS - f.Moment.FromS)
	for moment := f.Moment.FromS + float64(draw.IntN(span+1)); moment <= f.Moment.ToS && looks > 0; moment += f.stride() {
		if err := walk.to(moment); err != nil {
			return 0, nil, err
		}
		truth, err := f.judge(&walk)
		if err != nil {
			return 0, nil, err
		}
		if truth != nil && (best == nil || truth.CutMargin > best.CutMargin) {
			best, at = truth, moment
		}
		if best != nil {
			looks--
		}
	}
	return at, best, nil
}

func (f *Family) stride() float64 {
	if f.Kind == quiz.CallStage || f.Move != nil {
		return farLookEveryS
	}
	return lookEveryS
}

func (f *Family) item(seed uint64, scene engine.Scenario, moment float64, before string) quiz.Item {
	scene.Name = ""
	scene.EndS = moment + watchS
	if f.Move != nil {
		scene.EndS += f.Move.AfterS
	}
	return quiz.Item{
		V:        1,
		Engine:   engine.Version,
		Family:   f.ID,
		Seed:     seed,
		MomentS:  moment,
		Kind:     f.Kind,
		Title:    f.Words("title"),
		Scenario: scene,
		Show:     f.Show,
		Question: f.question(&scene, before),
	}
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
