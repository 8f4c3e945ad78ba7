package session

import (
	"strconv"

	"lintel/engine"
	"lintel/quiz"
)

// CheckPlan checks a title and scenes as an instructor plans them. Whether a
// family exists is for the content to say.
func CheckPlan(title string, scenes []Planned) error {
	if !quiz.IsTitle(title) {
		return engine.Bad("title", "is empty, too long or holds control characters", "give 1 to "+strconv.Itoa(quiz.MaxTitle)+" characters")
	}
	if len(scenes) == 0 || len(scenes) > MaxScenes {
		return engine.Bad("scenes", "are "+strconv.Itoa(len(scenes)), "give 1 to "+strconv.Itoa(MaxScenes))
	}
	for i := range scenes {
		if err := CheckPlanned("scenes["+strconv.Itoa(i)+"]", &scenes[i]); err != nil {
			return err
		}
	}
	return nil
}

// CheckPlanned checks one scene.
func CheckPlanned(where string, scene *Planned) error {
	switch {
	case scene.Family == "":
		return engine.Bad(where+".family", "is empty", "name a family")
	case (scene.Own != nil) != (scene.Family == quiz.OwnFamily):
		return engine.Bad(where+".own", "does not go with the family "+scene.Family, "give a sketched scene with the family "+quiz.OwnFamily+", and with no other")
	case scene.Seed > quiz.MaxSeq:
		return engine.Bad(where+".seed", "is too large", "give a whole number up to "+strconv.Itoa(quiz.MaxSeq))
	case scene.LookS < 0 || scene.LookS > MaxLookS:
		return engine.Bad(where+".look_s", "is "+strconv.Itoa(scene.LookS), "give 0 for no end, or up to "+strconv.Itoa(MaxLookS))
	case !quiz.IsNote(scene.Note, MaxNote):
		return engine.Bad(where+".note", "is too long or holds control characters", "keep it within "+strconv.Itoa(MaxNote)+" characters")
	case scene.Own != nil:
		return scene.Own.Check(where + ".own")
	}
	return nil
}
