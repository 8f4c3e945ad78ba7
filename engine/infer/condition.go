package infer

import (
	"slices"
	"strings"

	"lintel/engine"
)

// operator is how a condition compares.
type operator uint8

const (
	atLeast operator = iota
	atMost
	moreThan
	lessThan
	equals
	oneOf // of a word feature's words, as bits
	noneOf
)

// condition is one parsed line of a rule's When or Unless.
type condition struct {
	feature int
	op      operator
	value   float64
	words   uint64
}

// truth is yes, no, or not known because a feature was not seen.
type truth int8

const (
	no truth = iota
	unknown
	yes
)

func truthOf(b bool) truth {
	if b {
		return yes
	}
	return no
}

// comparisons in the order in which they must be looked for.
var comparisons = []struct {
	sign string
	op   operator
}{{" >= ", atLeast}, {" <= ", atMost}, {" > ", moreThan}, {" < ", lessThan}, {" = ", equals}, {" is not ", noneOf}, {" is ", oneOf}}

// parseCondition reads one line, such as
//
//	velocity >= 3
//	colour is brown or yellow_grey
//	closed up
//	not vanishes
func parseCondition(line string) (condition, error) {
	if c, ok := parseYesNo(line); ok {
		return c, nil
	}
	for _, c := range comparisons {
		name, rest, found := strings.Cut(line, c.sign)
		if !found {
			continue
		}
		at, known := findFeature(name)
		if !known {
			return condition{}, engine.Bad(quoted(line), "asks about "+quoted(name), "use one of "+featureNames())
		}
		if c.op == oneOf || c.op == noneOf {
			return parseWords(line, at, c.op, rest)
		}
		value, ok := engine.ParseDecimal(rest)
		if !ok || vocabulary[at].words != nil || vocabulary[at].yesNo {
			return condition{}, engine.Bad(quoted(line), "compares something that is not a number", "compare a number feature with a number")
		}
		return condition{feature: at, op: c.op, value: value}, nil
	}
	return condition{}, engine.Bad(quoted(line), "is not a condition", "write a comparison, or a yes-or-no feature with or without not")
}

func parseWords(line string, at int, op operator, rest string) (condition, error) {
	if vocabulary[at].words == nil {
		return condition{}, engine.Bad(quoted(line), "asks for a word of something that has none", "use a comparison or the bare name")
	}
	var bits uint64
	for _, word := range strings.Split(rest, " or ") {
		i := slices.Index(vocabulary[at].words, word)
		if i < 0 {
			return condition{}, engine.Bad(quoted(line), "names "+quoted(word), "use "+engine.OneOf(vocabulary[at].words))
		}
		bits |= 1 << i
	}
	return condition{feature: at, op: op, words: bits}, nil
}

// parseYesNo reads the name of a yes-or-no feature, which may hold any words.
func parseYesNo(line string) (condition, bool) {
	name, negated := strings.CutPrefix(line, "not ")
	at, known := findFeature(name)
	if !known || !vocabulary[at].yesNo {
		return condition{}, false
	}
	wanted := 1.0
	if negated {
		wanted = 0
	}
	return condition{feature: at, op: equals, value: wanted}, true
}

// holds judges the condition on the facts of an opening and of the building.
func (c *condition) holds(opening, building []float64) truth {
	var x float64
	switch {
	case c.feature >= openingFeatures:
		x = building[c.feature-openingFeatures]
	case opening == nil:
		return unknown
	default:
		x = opening[c.feature]
	}
	if x != x {
		return unknown
	}
	switch c.op {
	case atLeast:
		return truthOf(x >= c.value)
	case atMost:
		return truthOf(x <= c.value)
	case moreThan:
		return truthOf(x > c.value)
	case lessThan:
		return truthOf(x < c.value)
	case equals:
		return truthOf(x == c.value)
	case oneOf:
		return truthOf(c.words>>uint(x)&1 == 1)
	}
	return truthOf(c.words>>uint(x)&1 == 0)
}

func quoted(text string) string { return `"` + text + `"` }

func featureNames() string {
	names := make([]string, len(vocabulary))
	for i := range vocabulary {
		names[i] = vocabulary[i].name
	}
	return strings.Join(names, ", ")
}
