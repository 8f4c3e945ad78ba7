// Package progress adds a person's record up: per skill the error, its lean, the
// agreement beyond chance and the ability; how calls and reports came out; and what
// is taken for what. It is pure: the same record gives the same figures on a phone
// and on a server.
package progress

import (
	"slices"
	"sort"
	"strings"

	"lintel/quiz"
	"lintel/quiz/ability"
)

// recent is how many of the last answers of a skill tell how it stands now, and
// mostConfusions how many pairs are named. Chosen by us.
const (
	recent         = 20
	mostConfusions = 12
)

// Of adds up a record. Attempts are taken in the order given.
func Of(attempts []quiz.Attempt) quiz.Progress {
	book := book{skills: map[quiz.Skill]*tally{}, items: map[string]*ability.Rating{}, confused: map[string]*quiz.Confusion{}}
	var took []float64
	for i := range attempts {
		book.add(&attempts[i])
		if attempts[i].TookS > 0 {
			took = append(took, attempts[i].TookS)
		}
	}
	return quiz.Progress{
		V: 1, N: len(attempts), Skills: book.skillList(), Calls: calls(attempts), Reports: reports(attempts),
		Confusions: book.confusions(), Families: book.families(), MedianTookS: median(took),
	}
}

// book is a record being added up.
type book struct {
	skills   map[quiz.Skill]*tally
	items    map[string]*ability.Rating // by family and skill
	confused map[string]*quiz.Confusion
}

func (b *book) add(a *quiz.Attempt) {
	for i := range a.Parts {
		part := &a.Parts[i]
		skill, kind := skillOf(part)
		if skill == "" {
			continue
		}
		if b.skills[skill] == nil {
			b.skills[skill] = &tally{}
		}
		t := b.skills[skill]
		t.add(part)
		id := a.Family + "\n" + string(skill)
		if b.items[id] == nil {
			b.items[id] = &ability.Rating{}
		}
		ability.Meet(&t.person, b.items[id], 1-part.Error, guesses[kind])
		b.confuse(part)
	}
}

// skillList is every skill practised, the weakest first.
func (b *book) skillList() []quiz.SkillProgress {
	list := []quiz.SkillProgress{}
	for _, skill := range quiz.Skills {
		if t := b.skills[skill]; t != nil {
			list = append(list, t.progress(skill))
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].Ability < list[j].Ability })
	return list
}

// families is the difficulty of each family met: the mean over what it asks.
func (b *book) families() []quiz.FamilyRating {
	list := []quiz.FamilyRating{}
	ids := make([]string, 0, len(b.items))
	for id := range b.items {
		ids = append(ids, id)
	}
	sort.SliceStable(ids, func(i, j int) bool { return ids[i] < ids[j] })
	asked := 0.0
	for _, id := range ids {
		family, _, _ := strings.Cut(id, "\n")
		if last := len(list) - 1; last < 0 || list[last].Family != family {
			list, asked = append(list, quiz.FamilyRating{Family: family}), 0
		}
		f, item := &list[len(list)-1], b.items[id]
		f.N = max(f.N, item.N)
		f.Difficulty = (float64(f.Difficulty*asked) + item.Logits) / (asked + 1)
		asked++
	}
	return list
}

// median is nil of nothing.
func median(list []float64) *float64 {
	if len(list) == 0 {
		return nil
	}
	sorted := slices.Clone(list)
	sort.SliceStable(sorted, func(i, j int) bool { return sorted[i] < sorted[j] })
	middle := (sorted[(len(sorted)-1)/2] + sorted[len(sorted)/2]) / 2
	return &middle
}

func mean(list []float64) *float64 {
	if len(list) == 0 {
		return nil
	}
	sum := 0.0
	for _, x := range list {
		sum += x
	}
	sum /= float64(len(list))
	return &sum
}
