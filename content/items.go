package content

import (
	"lintel/engine"
	"lintel/engine/sim"
	"lintel/quiz"
	"lintel/quiz/item"
	"lintel/quiz/score"
)

// Library is what a fire needs of the content.
func Library() sim.Library { return sim.Library{Materials: Materials(), Scales: scales} }

// Item makes the practice item of a family and a seed.
func Item(family string, seed uint64) (quiz.Item, error) {
	made, _, err := Make(family, seed)
	return made, err
}

// Make is Item with its truth.
func Make(family string, seed uint64) (quiz.Item, item.Truth, error) {
	return MakeScene(quiz.Scene{Family: family, Seed: seed})
}

// MakeScene is Make for a scene that may name the contrast of a pair, or be an
// instructor's own.
func MakeScene(s quiz.Scene) (quiz.Item, item.Truth, error) {
	_, made, truth, err := workOut(s)
	return made, truth, err
}

// workOut makes a scene, with the family that has its words and rule.
func workOut(s quiz.Scene) (f *item.Family, made quiz.Item, truth item.Truth, err error) {
	if s.Family == quiz.OwnFamily {
		f, made, truth, err = ownScene(s)
	} else if f, err = familyOf(s.Family); err == nil {
		made, truth, err = item.Make(f, s.Seed, s.Contrast, Library())
	}
	made.Content = Version
	return f, made, truth, err
}

// ownScene makes what an instructor sketched. Its words stand in content/sentences,
// where those of a family would.
func ownScene(s quiz.Scene) (f *item.Family, made quiz.Item, truth item.Truth, err error) {
	if s.Own == nil {
		return nil, made, truth, engine.Bad("own", "is missing", "give the scene that was sketched")
	}
	made, truth, err = item.Own(s.Own, s.Seed, Library())
	return &item.Family{ID: quiz.OwnFamily, Rule: quiz.OwnFamily, Kind: s.Own.Kind}, made, truth, err
}

// Score judges an answer. The truth is worked out anew from the family and the
// seed: nothing that the answer says of the scene is believed. An answer to
// another version of the engine or content is refused, for its scene is not
// the one that would be made here.
func Score(a quiz.Answer) (quiz.Verdict, error) {
	if err := sameVersion(&a); err != nil {
		return quiz.Verdict{}, err
	}
	scorer, err := Scorer(a.Scene())
	if err != nil {
		return quiz.Verdict{}, err
	}
	return scorer(a)
}

func sameVersion(a *quiz.Answer) error {
	switch {
	case a.Engine != engine.Version:
		return engine.Bad("engine", "is another version than "+engine.Version, "keep the verdict of the version that asked")
	case a.Content != Version:
		return engine.Bad("content", "is another version than "+Version, "keep the verdict of the version that asked")
	}
	return nil
}

// Scorer works one scene out, to score any number of answers to it.
func Scorer(s quiz.Scene) (func(quiz.Answer) (quiz.Verdict, error), error) {
	f, made, truth, err := workOut(s)
	if err != nil {
		return nil, err
	}
	return scorerOf(f, &made, &truth), nil
}

func scorerOf(f *item.Family, made *quiz.Item, truth *item.Truth) func(quiz.Answer) (quiz.Verdict, error) {
	return func(a quiz.Answer) (quiz.Verdict, error) {
		if err := sameVersion(&a); err != nil {
			return quiz.Verdict{}, err
		}
		return judge(f, made, truth, &a)
	}
}

func judge(f *item.Family, made *quiz.Item, truth *item.Truth, a *quiz.Answer) (quiz.Verdict, error) {
	verdict, err := score.Judge(made, truth.Accept, a)
	if err != nil {
		return quiz.Verdict{}, err
	}
	verdict.Exact = truth.Exact
	verdict.Why, verdict.Tell = score.Explain(f.Words(""), made.Question.Asks, verdict.Parts)
	// What tells a rating or a change is one thing whatever came true.
	if f.Kind == quiz.ReadOpening || f.Kind == quiz.PredictMove {
		verdict.Tell = f.Words("tell")
	}
	verdict.Rule, verdict.Source = "rule/"+f.Rule+"/text", "rule/"+f.Rule+"/source"
	return verdict, nil
}

// Form lists the scenes of a person's test form.
func Form(kind quiz.FormKind, person string) ([]quiz.Scene, error) {
	return item.Form(Families(), kind, person)
}

func familyOf(id string) (*item.Family, error) {
	all := Families()
	for i := range all {
		if all[i].ID == id {
			return &all[i], nil
		}
	}
	ids := make([]string, len(all))
	for i := range all {
		ids[i] = all[i].ID
	}
	return nil, engine.Bad("family", "is "+id+", which is not one of ours", "use "+engine.OneOf(ids))
}
