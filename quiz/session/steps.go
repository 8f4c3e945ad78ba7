package session

import (
	"maps"
	"slices"
	"strconv"

	"lintel/engine"
)

// move takes the acts that say where the class stands. Each may be taken back
// for a moment, but the taking back itself may not.
func (s *State) move(e Entry) error {
	if e.Kind == Undone {
		return s.undo(e)
	}
	if err := s.stillOpen(); err != nil {
		return err
	}
	before := s.Point
	if err := s.step(e); err != nil {
		return err
	}
	s.back, s.backMS, s.backSeen = &before, e.AtMS, ""
	if s.shows() && !s.revealed[s.Scene] {
		s.revealed = maps.Clone(grown(s.revealed))
		s.revealed[s.Scene] = true
		s.backSeen = s.Scene
	}
	if e.Kind == Ended {
		s.EndedMS = e.AtMS
	}
	return nil
}

// shows reports whether the step shows a spread.
func (s *State) shows() bool { return s.Scene != "" && (s.Step == Compare || s.Step == Cutaway) }

func (s *State) step(e Entry) error {
	switch e.Kind {
	case Started:
		if s.Step != Gather {
			return engine.Bad("class", "has started already", "step on instead")
		}
		if s.Class.Pace == Self {
			s.Point = Point{Step: Commit}
			return nil
		}
		return s.look(orFirst(e.Scene, s.Scenes), e.AtMS)
	case Stepped:
		return s.stepTo(e)
	case LookExtended:
		if s.Step != Watch || s.LookUntil == 0 {
			return engine.Bad("look", "has no end to put off", "extend a timed look while the scene is watched")
		}
		if e.AddS < 1 || e.AddS > MaxLookS {
			return engine.Bad("add_s", "is "+strconv.Itoa(e.AddS), "give 1 to "+strconv.Itoa(MaxLookS))
		}
		s.LookUntil = max(s.LookUntil, e.AtMS) + int64(e.AddS)*1000
	case LookUntimed:
		if s.Step != Watch {
			return engine.Bad("look", "is not on", "untime it while the scene is watched")
		}
		s.LookUntil = 0
	case Ended:
		s.Point = Point{Step: Over, Scene: s.Scene}
	}
	return nil
}

func orFirst(scene string, scenes []Scene) string {
	if scene == "" {
		return scenes[0].ID
	}
	return scene
}

// stepTo goes to a step of a scene. A scene whose spread has been shown is not
// asked again; back to gather there is no way.
func (s *State) stepTo(e Entry) error {
	scene, _ := s.SceneOf(e.Scene)
	switch {
	case s.Step == Gather:
		return engine.Bad("class", "has not started", "start it first")
	case s.Class.Pace == Self && e.To == Commit:
		s.Point = Point{Step: Commit}
		return nil
	case scene == nil:
		return engine.Bad("scene", "is not one of this class", "name a scene of the class")
	}
	switch e.To {
	case Watch:
		if s.Class.Pace == Self {
			return engine.Bad("to", "is watch", "in a self-paced class everyone looks in their own time")
		}
		return s.look(e.Scene, e.AtMS)
	case Commit:
		if s.Scene != e.Scene || s.Step != Watch {
			return engine.Bad("to", "is commit", "let the scene be watched first")
		}
	case Compare:
		if s.Class.Pace == Led && (s.Scene != e.Scene || s.Step != Commit && s.Step != Cutaway) {
			return engine.Bad("to", "is compare", "let the readings be committed first")
		}
	case Cutaway:
		if s.Scene != e.Scene || s.Step != Compare {
			return engine.Bad("to", "is cutaway", "compare the readings first")
		}
	default:
		return engine.Bad("to", "is "+string(e.To), "step to watch, commit, compare or cutaway")
	}
	s.Point = Point{Step: e.To, Scene: e.Scene}
	return nil
}

// look begins the look at a scene.
func (s *State) look(id string, atMS int64) error {
	scene, _ := s.SceneOf(id)
	if scene == nil {
		return engine.Bad("scene", "is not one of this class", "name a scene of the class")
	}
	if s.revealed[id] {
		return engine.Bad("scene", "has been compared already", "go on to another, or add the family again with a new seed")
	}
	s.Point = Point{Step: Watch, Scene: id, LookFrom: atMS}
	if scene.LookS > 0 {
		s.LookUntil = atMS + int64(scene.LookS)*1000
	}
	return nil
}

func (s *State) undo(e Entry) error {
	if s.back == nil || e.AtMS-s.backMS > UndoMS {
		return engine.Bad("step", "cannot be taken back any more", "a step may be undone for 5 seconds")
	}
	s.Point = *s.back
	if s.backSeen != "" {
		s.revealed = maps.Clone(s.revealed)
		delete(s.revealed, s.backSeen)
	}
	s.back, s.backSeen, s.EndedMS = nil, "", 0
	return nil
}

func (s *State) addScene(e Entry) error {
	if err := s.stillOpen(); err != nil {
		return err
	}
	if len(e.Scenes) != 1 || len(s.Scenes) >= MaxScenes {
		return engine.Bad("scenes", "are too many", "add one, up to "+strconv.Itoa(MaxScenes))
	}
	if held, _ := s.SceneOf(e.Scenes[0].ID); held != nil {
		return engine.Bad("scene", "is in the class already", "give it an id of its own")
	}
	s.Scenes = append(slices.Clip(s.Scenes), e.Scenes[0])
	return nil
}

func (s *State) reorder(e Entry) error {
	if err := s.stillOpen(); err != nil {
		return err
	}
	ordered := make([]Scene, 0, len(s.Scenes))
	for _, id := range e.Order {
		scene, _ := s.SceneOf(id)
		if scene == nil || slices.ContainsFunc(ordered, func(o Scene) bool { return o.ID == id }) {
			return engine.Bad("order", "does not name every scene once", "list the ids of all scenes")
		}
		ordered = append(ordered, *scene)
	}
	if len(ordered) != len(s.Scenes) {
		return engine.Bad("order", "does not name every scene once", "list the ids of all scenes")
	}
	s.Scenes = ordered
	return nil
}
