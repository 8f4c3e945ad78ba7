package infer

import "math"

// trial asks what the rules would make of an answer not yet given. It works the
// facts out again in its own copy and asks only the rules that what changed could
// move: there are hundreds of answers to try within one reading.
type trial struct {
	set     *Set
	s       *scene
	base    *facts   // as seen
	known   *verdict // of base
	f       facts    // with the answer
	v       verdict
	changed []featureMask // by opening
	whole   featureMask   // of the building
	any     featureMask   // of them all
}

// featureMask is a set of features.
type featureMask [2]uint64

func (m *featureMask) add(feature int) { m[feature/64] |= 1 << (feature % 64) }

func (m *featureMask) meets(a *featureMask) bool { return m[0]&a[0]|m[1]&a[1] != 0 }

func (m *featureMask) join(a *featureMask) { m[0], m[1] = m[0]|a[0], m[1]|a[1] }

func newTrial(set *Set, s *scene, f *facts, v *verdict) *trial {
	t := &trial{set: set, s: s, base: f, known: v, changed: make([]featureMask, len(s.now))}
	t.f.openings = make([][openingFeatures]float64, len(s.now))
	t.v = *set.newVerdict(0)
	return t
}

// expectedChange is the information in bits that the answer is expected to bring:
// how far each answer would move the stages (relative entropy), on average over
// the answers, each being as likely as the stages make it. It is never below 0.
func (t *trial) expectedChange(i int, q *question, now *[stageCount]float64) float64 {
	change := 0.0
	for answer := range q.answers {
		likely := t.set.answerChance(q, answer, now)
		if likely == 0 {
			continue
		}
		t.suppose(i, q, q.value(answer))
		t.judge()
		after := t.v.spread()
		change += float64(likely * divergence(&after, now))
	}
	return math.Max(change, 0)
}

// suppose works out the facts with one answer, and which of them it changed.
func (t *trial) suppose(i int, q *question, value float64) {
	copy(t.f.openings, t.base.openings)
	t.f.building = t.base.building
	own := &t.f.openings[i]
	own[q.feature] = value
	t.s.now[i].derive(own)
	clear(t.changed)
	t.whole = featureMask{}
	if q.alone {
		t.compare(i, 0)
		t.any = t.changed[i]
		return
	}
	t.s.relate(&t.f)
	for feature, x := range t.f.building {
		if differs(x, t.base.building[feature]) {
			t.whole.add(openingFeatures + feature)
		}
	}
	t.any = t.whole
	for j := range t.changed {
		from := firstCompared
		if j == i {
			from = 0
		}
		t.compare(j, from)
		t.any.join(&t.changed[j])
	}
}

// compare notes which of an opening's features changed, from one on.
func (t *trial) compare(j, from int) {
	now, base := &t.f.openings[j], &t.base.openings[j]
	for feature := from; feature < openingFeatures; feature++ {
		if differs(now[feature], base[feature]) {
			t.changed[j].add(feature)
		}
	}
}

// differs counts two values not seen as the same.
func differs(a, b float64) bool { return a != b && !(math.IsNaN(a) && math.IsNaN(b)) }

// judge asks the rules that could have moved and keeps the rest as they were.
func (t *trial) judge() {
	for r := range t.set.rules {
		c := &t.set.rules[r]
		switch {
		case !c.asks.meets(&t.any):
			t.v.fired[r] = t.known.fired[r]
		case t.known.at[r] == nil:
			t.v.fired[r] = c.fires(nil, t.f.building[:])
		default:
			t.v.fired[r] = t.firesAnywhere(r, c)
		}
	}
	t.set.add(&t.f, &t.v)
}

func (t *trial) firesAnywhere(r int, c *compiled) bool {
	for j := range t.f.openings {
		fired := t.known.at[r][j]
		if c.asks.meets(&t.whole) || c.asks.meets(&t.changed[j]) {
			fired = c.fires(t.f.openings[j][:], t.f.building[:])
		}
		if fired {
			return true
		}
	}
	return false
}
