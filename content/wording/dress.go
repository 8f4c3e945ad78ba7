package wording

import (
	"lintel/content"
	"lintel/engine"
	"lintel/quiz"
)

// Finding puts a finding into words, in place.
func Finding(f *engine.Finding) {
	say(&f.PathNote)
	for i := range f.Hazards {
		sayAll(f.Hazards[i].Conditions)
	}
	for _, list := range [][]engine.Evidence{f.Because, f.Against} {
		for i := range list {
			say(&list[i].Text)
			say(&list[i].Source)
		}
	}
	sayAll(f.Cautions)
}

// Events puts the causes of events into words, in place; their kinds stay as they are.
func Events(list []engine.Event) {
	for i := range list {
		say(&list[i].Cause)
	}
}

// Item puts an item into words, in place.
func Item(it *quiz.Item) {
	say(&it.Title)
	Question(&it.Question)
}

// Question puts a question and its asks into words, in place.
func Question(q *quiz.Question) {
	say(&q.Text)
	for i := range q.Asks {
		say(&q.Asks[i].Text)
	}
}

// Verdict puts a verdict into words, in place.
func Verdict(v *quiz.Verdict) {
	for i := range v.Parts {
		say(&v.Parts[i].Remark)
	}
	for _, text := range []*string{&v.Why, &v.Rule, &v.Source, &v.Tell} {
		say(text)
	}
}

func say(text *string) { *text = Say(*text) }

func sayAll(list []string) {
	for i := range list {
		say(&list[i])
	}
}

// Score is content.Score in words.
func Score(a quiz.Answer) (quiz.Verdict, error) {
	verdict, err := content.Score(a)
	Verdict(&verdict)
	return verdict, err
}
