package session

import (
	"math"
	"slices"

	"lintel/quiz"
)

// maxNamed is how many people are named on each side (chosen by us).
const maxNamed = 8

// side is a value with who gave it.
type side struct {
	value string
	rank  float64
	by    []int
}

// apart finds the two readings that lie furthest from each other along the ask's
// own scale; of pairs equally far, the one with the most people on its smaller
// side, since there the class is divided and not one person mistaken. It is nil
// while fewer than two values are given.
func apart(item *quiz.Item, kind quiz.AskKind, all []given, named bool) *Apart {
	sides := sidesOf(scale(item, kind), all)
	if len(sides) < 2 {
		return nil
	}
	var low, high *side
	far, smaller := -1.0, 0
	for i := range sides {
		for j := i + 1; j < len(sides); j++ {
			away, few := distance(kind, &sides[i], &sides[j]), min(len(sides[i].by), len(sides[j].by))
			if away > far || away == far && few > smaller {
				low, high, far, smaller = &sides[i], &sides[j], away, few
			}
		}
	}
	out := &Apart{Low: low.value, High: high.value, LowN: len(low.by), HighN: len(high.by)}
	if named {
		out.LowBy, out.HighBy = low.by[:min(maxNamed, len(low.by))], high.by[:min(maxNamed, len(high.by))]
	}
	return out
}

// distance is how far two values lie apart. Levels, planes, moments, changes and
// trends are a scale; words of other asks are only the same or different. To have
// reported nothing is as far from any moment as can be.
func distance(kind quiz.AskKind, a, b *side) float64 {
	switch kind {
	case quiz.AskLevel, quiz.AskPlane, quiz.AskChange, quiz.AskTrend:
		return b.rank - a.rank
	case quiz.AskMoment:
		if a.value == Quiet || b.value == Quiet {
			return math.MaxFloat64
		}
		return b.rank - a.rank
	}
	return 1
}

// sidesOf groups what was given by value, in the order of the scale.
func sidesOf(order []string, all []given) []side {
	var sides []side
	for _, g := range all {
		value := Value(&g.part.Given)
		if value == "" {
			continue
		}
		at := slices.IndexFunc(sides, func(s side) bool { return s.value == value })
		if at < 0 {
			rank := float64(slices.Index(order, value))
			if given := &g.part.Given; given.Plane != nil {
				rank = *given.Plane
			} else if given.AtS != nil {
				rank = *given.AtS
			}
			sides, at = append(sides, side{value: value, rank: rank}), len(sides)
		}
		sides[at].by = append(sides[at].by, g.person)
	}
	slices.SortStableFunc(sides, func(a, b side) int {
		switch {
		case a.rank < b.rank:
			return -1
		case a.rank > b.rank:
			return 1
		}
		return 0
	})
	return sides
}
