// Package infer reads smoke: from the ratings of what shows at each opening to
// the stages a fire may be in, its regime, what each opening does in the flow
// path, which is nearest the seat, the conditions for rapid fire events, and the
// look that would change the answer most. It sees only what a firefighter sees.
//
// The knowledge is not in this package. It is a Set of rules, written in plain
// words under content/rules, each with its sources and with how it can be wrong.
// A rule is evidence: it adds to or takes from the log-odds of what it speaks
// for, by the trade's confidence in it or, once measured, by the weight fitted to
// simulated fires. Nothing here is certain: where evidence is thin the rest stays
// undetermined, and where the trade's sources disagree the answer is a set.
//
// Limits: a reading describes the moment of its last look; the change from the
// look before is evidence too. Openings are compared within their own class, so
// that a crack is not held against a door.
package infer
