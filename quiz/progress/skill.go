package progress

import (
	"strings"

	"lintel/engine"
	"lintel/quiz"
)

// skills names what each kind of ask trains; a level trains its cue.
var skills = map[quiz.AskKind]quiz.Skill{
	quiz.AskFlow: quiz.SkillFlow, quiz.AskPlane: quiz.SkillPlane, quiz.AskStage: quiz.SkillStage,
	quiz.AskRegime: quiz.SkillRegime, quiz.AskChange: quiz.SkillChange, quiz.AskOpening: quiz.SkillNearest,
	quiz.AskTrend: quiz.SkillTrend, quiz.AskPick: quiz.SkillPair, quiz.AskMoment: quiz.SkillReport,
}

// guesses are the credits of a blind guess, the mean over every truth. A test
// holds them against the scores of such guesses.
var guesses = map[quiz.AskKind]float64{
	quiz.AskLevel: 0.6, quiz.AskFlow: 0.375, quiz.AskPlane: 0.5, quiz.AskStage: 0.3265, quiz.AskRegime: 0.5,
	quiz.AskChange: 0.5556, quiz.AskOpening: 0.4, quiz.AskTrend: 0.5556, quiz.AskPick: 0.5, quiz.AskMoment: 0.5,
}

// whatAsked is the kind and cue of a part. A verdict of an older version says them
// in the ask's name alone: "level:volume@door".
func whatAsked(p *quiz.Part) (quiz.AskKind, engine.Cue) {
	if p.Kind != "" {
		return p.Kind, p.Cue
	}
	name, _, _ := strings.Cut(p.Ask, "@")
	kind, cue, _ := strings.Cut(name, ":")
	return quiz.AskKind(kind), engine.Cue(cue)
}

// skillOf is the skill that a part shows, or none for what this version does not know.
func skillOf(p *quiz.Part) (quiz.Skill, quiz.AskKind) {
	kind, cue := whatAsked(p)
	if kind == quiz.AskLevel {
		if engine.Known(cue, engine.OrdinalCues) {
			return quiz.Skill(cue), kind
		}
		return "", kind
	}
	return skills[kind], kind
}
