package main

import (
	"math"
	"slices"

	"lintel/engine"
	"lintel/engine/infer"
)

// model is the weights: one head per thing that is told apart.
type model struct {
	stage  head // a score for every true stage
	regime head
	hazard [4]head
}

// head is a linear score for each class over the rules that fired. Start is the
// trade's weight, to a share of which (pull) the fit is tied; sign bounds a weight
// to what the rule claims: 0 means the rule says nothing of that class, and may lean
// its way a little.
type head struct {
	bias   []float64
	weight [][]float64 // by rule and class
	start  [][]float64
	sign   [][]float64
	free   bool    // bound to no claim
	even   bool    // before any sign every class counts alike, see fit
	pull   float64 // share of the trade's weight to which the fit is tied
	keep   float64 // share of the trade's weight that is kept whatever the fires say
	sure   float64 // the same for a rule of high confidence, where it is more
	lean   float64 // how far a rule may lean where it claims nothing
	dear   int     // class whose examples count dearPreFlashover times; none for a head without
	under  []order // by rule: classes whose weight may not pass another's
}

var trueStages = engine.Stages[:len(engine.Stages)-1]

// tie is how many examples' worth the trade's own weight counts for. Chosen by us.
const tie = 6.0

// startWeights are the trade's, as infer gives them to an unmeasured rule.
var startWeights = map[infer.Confidence]float64{infer.High: 1.5, infer.Middle: 1.0, infer.Low: 0.5}

// claim is what a rule may say of a class: the side its weight must keep to, and
// whether the trade gives it a weight to start from.
type claim struct {
	side  float64
	taken bool // from the trade
}

var silent = claim{}

func newHead(rules []infer.Rule, classes int, claims func(r *infer.Rule, class int) claim) head {
	h := head{bias: make([]float64, classes), pull: 1, dear: none}
	for i := range rules {
		start, sign := make([]float64, classes), make([]float64, classes)
		for c := range classes {
			said := claims(&rules[i], c)
			sign[c] = said.side
			if said.taken {
				start[c] = said.side * startWeights[rules[i].Confidence]
			}
		}
		h.start, h.sign = append(h.start, start), append(h.sign, sign)
		h.weight = append(h.weight, append([]float64(nil), start...))
	}
	return h
}

func learn(rules []infer.Rule, s sample) model {
	var m model
	m.stage = newHead(rules, len(trueStages), stageClaim)
	m.stage.even, m.stage.pull, m.stage.keep, m.stage.under = true, pullStage, keepStage, heatOrder(rules)
	m.stage.lean = leanStage
	m.stage.dear = indexOf(trueStages, engine.PreFlashover)
	m.stage.fit(s, func(x *moment) int { return indexOf(trueStages, x.Stage) })
	m.regime = newHead(rules, 2, regimeClaim)
	m.regime.even, m.regime.pull, m.regime.keep = true, pullStage, keepStage
	m.regime.fit(s, func(x *moment) int {
		if x.Regime == engine.VentilationLimited {
			return 1
		}
		return 0
	})
	for h, hazard := range engine.Hazards {
		m.hazard[h] = newHead(rules, 2, func(r *infer.Rule, class int) claim { return hazardClaim(r, hazard, class) })
		m.hazard[h].keep, m.hazard[h].sure = keepHazard, sureHazard
		m.hazard[h].fit(s.asking(h), func(x *moment) int {
			if x.near(h) {
				return 1
			}
			return 0
		})
	}
	return m
}

func stageClaim(r *infer.Rule, class int) claim {
	switch {
	case indexOf(r.Supports, trueStages[class]) >= 0:
		return claim{1, true}
	case indexOf(r.Opposes, trueStages[class]) >= 0:
		return claim{-1, true}
	}
	return silent
}

func regimeClaim(r *infer.Rule, class int) claim {
	switch {
	case class == 0:
		return silent
	case r.Regime == engine.VentilationLimited:
		return claim{1, true}
	case r.Regime == engine.FuelLimited:
		return claim{-1, true}
	}
	return silent
}

// near reports whether a hazard is near at a moment: it comes or would on opening
// up, or the fire is already in the stage before it.
func (m *moment) near(h int) bool {
	return m.Hazards[h] || engine.Hazards[h] == engine.Flashover && m.Stage == engine.PreFlashover
}

// asks reports whether a hazard is a question at a moment. Of a fire that burns from
// wall to wall flashover is none: it is past, and what it pushes out looks the same.
func (m *moment) asks(h int) bool {
	return engine.Hazards[h] != engine.Flashover || m.Stage != engine.FullyDeveloped
}

// asking is the sample without the moments at which a hazard is no question.
func (s sample) asking(h int) sample {
	out := sample{moments: s.moments}
	for _, e := range s.examples {
		if s.moments[e.moment].asks(h) {
			out.examples = append(out.examples, e)
		}
	}
	return out
}

// pastEvent are the stages in which a rapid event is behind, or not yet near.
var pastEvent = []engine.Stage{engine.Incipient, engine.FullyDeveloped, engine.Decay, engine.AfterKnockDown}

// hazardClaim lets a rule raise the hazards that it names. A rule that names no
// such hazard and supports a stage in which the event is behind may lower it, but
// for one that asks for fierce smoke, and for one that fits a fire short of air as
// well, whose rapid event only waits for the next opening. Plain flashover does not
// wait so: what comes when a starved fire gets air is a hazard of its own.
func hazardClaim(r *infer.Rule, hazard engine.Hazard, class int) claim {
	switch {
	case class == 0:
		return silent
	case indexOf(r.Hazards, hazard) >= 0:
		return claim{1, true}
	}
	waits := hazard != engine.Flashover && indexOf(r.Supports, engine.VentilationDecay) >= 0
	if asksFor(r, fierce) || waits {
		return silent
	}
	for _, stage := range pastEvent {
		if indexOf(r.Supports, stage) >= 0 {
			return claim{-1, false}
		}
	}
	return silent
}

// rounds and pace of the descent (Adam; Kingma and Ba 2015, from memory, to be
// confirmed), enough for the loss to stand still in the fourth digit.
const (
	rounds = 400
	pace   = 0.05
)

// fit lowers the log loss over the sample plus the tie to the trade's weights. An
// even head has no bias: how many moments of a kind the drawn fires hold says how
// long they were left to burn, and nothing of the fire that someone stands before.
func (h *head) fit(s sample, class func(*moment) int) {
	classes := len(h.bias)
	step := newDescent(len(h.weight), classes)
	p := make([]float64, classes)
	for range rounds {
		step.clear()
		for i := range s.examples {
			e := &s.examples[i]
			h.shares(e.rules, p)
			want, worth := class(&s.moments[e.moment]), 1.0
			if want == h.dear {
				worth = dearPreFlashover
			}
			for c := range p {
				off := p[c]
				if c == want {
					off--
				}
				off *= worth
				step.bias[c] += off
				for _, r := range e.rules {
					step.weight[r][c] += off
				}
			}
		}
		for r := range h.weight {
			for c := range h.weight[r] {
				step.weight[r][c] += tie * (h.weight[r][c] - h.pull*h.start[r][c])
			}
		}
		if h.even {
			clear(step.bias)
		}
		step.take(h, float64(len(s.examples)))
		h.bound()
	}
}

// pullStage is what a sign's own weight is worth where a dozen fire together, as
// they do, and tell the same thing more than once; keepStage is what is left of it
// at least. Both hold for stages and the regime, whose truths are surer in a model
// than those of rapid events. Chosen by us, on fires of their own.
const (
	pullStage = 0.3
	keepStage = 0.03
)

// dearPreFlashover is how many others a moment before flashover counts for: few
// fires are looked at in it, it is over soonest, and to call it by another name
// costs more than the reverse. Chosen by us.
const dearPreFlashover = 3.5

// none is no class.
const none = -1

// keepHazard is the share of the trade's weight that a sign of a hazard keeps at
// least: until the fire model is validated, no simulation talks a sign that the
// trade lists out of counting. It is small because a dozen such signs fire together
// in any strong fire, one that is past its peak as well. Chosen by us.
const keepHazard = 0.05

// sureHazard is the same for a sign that an authority lists outright, so that tongues
// of flame in the smoke never tell less than their want does. Chosen by us.
const sureHazard = 0.15

// leanStage is how far a sign may tell of a stage that the trade does not name with
// it: less than any sign that it does name. Chosen by us.
const leanStage = 0.4

// kept is what is left at least of a weight of the trade's.
func (h *head) kept(start float64) float64 {
	share := h.keep
	if math.Abs(start) == startWeights[infer.High] {
		share = math.Max(h.keep, h.sure)
	}
	return share * math.Abs(start)
}

// bound keeps every weight on the side that its rule claims.
func (h *head) bound() {
	if h.free {
		return
	}
	for r := range h.weight {
		lean := h.lean
		if slices.Max(h.sign[r]) <= 0 {
			lean = 0 // it speaks for no stage: of where to look, or only of what is not
		}
		for c, w := range h.weight[r] {
			least := h.kept(h.start[r][c])
			switch {
			case h.sign[r][c] == 0:
				h.weight[r][c] = math.Max(-lean, math.Min(lean, w))
			case w*h.sign[r][c] < least:
				h.weight[r][c] = least * h.sign[r][c]
			}
		}
	}
	for _, o := range h.under {
		h.weight[o.rule][o.low] = min(h.weight[o.rule][o.low], h.weight[o.rule][o.high])
	}
}

// shares fills p with the probability of each class.
func (h *head) shares(rules []int, p []float64) {
	top := math.Inf(-1)
	for c := range p {
		p[c] = h.bias[c]
		for _, r := range rules {
			p[c] += h.weight[r][c]
		}
		top = math.Max(top, p[c])
	}
	sum := 0.0
	for c := range p {
		p[c] = math.Exp(p[c] - top)
		sum += p[c]
	}
	for c := range p {
		p[c] /= sum
	}
}

func indexOf[T comparable](list []T, x T) int {
	for i := range list {
		if list[i] == x {
			return i
		}
	}
	return -1
}
