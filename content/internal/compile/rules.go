package main

import (
	"fmt"

	"lintel/content/internal/measured"
	"lintel/engine/infer"
	"lintel/engine/shape"
)

// ruleEntry is a rule as it is written: the rule and, in the same entry, the
// cases in which it must and must not fire.
type ruleEntry map[string]any

// split parts the cases of an entry from its rule.
func (e ruleEntry) split() (infer.Rule, []infer.Case, error) {
	rule := map[string]any{}
	for name, value := range e {
		if name != "cases" {
			rule[name] = value
		}
	}
	var r infer.Rule
	if err := shape.Decode(rule, &r); err != nil {
		return r, nil, err
	}
	var cases []infer.Case
	if e["cases"] == nil {
		return r, nil, nil
	}
	if err := shape.Decode(e["cases"], &cases); err != nil {
		return r, nil, err
	}
	for i := range cases {
		cases[i].Rule = r.ID
	}
	return r, cases, nil
}

func rulesOf(entries any) (any, error) {
	rules := []infer.Rule{}
	for _, entry := range entries.([]ruleEntry) {
		rule, _, err := entry.split()
		if err != nil {
			return nil, named(entry, err)
		}
		rules = append(rules, rule)
	}
	return rules, nil
}

// readersRules leaves out what only people read, to spare the phone the download:
// of what the engine says there are keys.
func readersRules(entries any) (any, error) {
	all, err := rulesOf(entries)
	if err != nil {
		return nil, err
	}
	rules := all.([]infer.Rule)
	for i := range rules {
		rules[i].LookAlike, rules[i].NextLook, rules[i].CounterSign = "", "", ""
	}
	keysOfRules(rules)
	return rules, nil
}

func casesOf(entries any) (any, error) {
	var cases []infer.Case
	for _, entry := range entries.([]ruleEntry) {
		_, some, err := entry.split()
		if err != nil {
			return nil, named(entry, err)
		}
		cases = append(cases, some...)
	}
	return cases, nil
}

func named(entry ruleEntry, err error) error {
	return fmt.Errorf("rule %v: %w", entry["id"], err)
}

// checkRules makes the rules ready once, so that one that cannot be read never
// gets into the product.
func checkRules(values map[string]any) error {
	rules, err := rulesOf(values["rules"])
	if err != nil {
		return err
	}
	m := values["measured"].(measured.File)
	_, err = infer.NewSet(rules.([]infer.Rule), m.Weights(), m.Priors.Reader())
	return err
}
