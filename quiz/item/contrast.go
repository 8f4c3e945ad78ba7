package item

import (
	"slices"

	"lintel/engine"
	"lintel/quiz"
)

// side tells which side of the contrast that is still wanted a moment is on, 0 or
// 1, or -1 for neither or for one too near a cut point to be fair, and how far it
// stands from one.
func (s *pairSearch) side(w *walk) (int, float64, error) {
	if s.contrast.Stages != nil || s.contrast.Regimes != nil {
		return s.sideOfCall(w)
	}
	return s.sideOfOpening(w)
}

// sideOfCall is the side by stage or by regime.
func (s *pairSearch) sideOfCall(w *walk) (int, float64, error) {
	side := slices.Index(s.contrast.Stages, w.run.Stage())
	if s.contrast.Regimes != nil {
		side = slices.Index(s.contrast.Regimes, w.run.Regime())
	}
	if !s.wants(side) || !plain(w.run.Stage(), w.run.Regime()) {
		return -1, 0, nil
	}
	settled, err := w.settled()
	if settled < fairSettled && !w.test {
		side = -1
	}
	return side, settled, err
}

// sideOfOpening is the side by what the opening asked about shows: which way it
// flows, or the level of a cue in what comes out.
func (s *pairSearch) sideOfOpening(w *walk) (int, float64, error) {
	rating, err := w.rate(w.run, s.family.Show[0])
	if err != nil {
		return -1, 0, err
	}
	ask := Ask{Kind: quiz.AskLevel, Cue: s.contrast.Cue}
	margin := rating.Margins.Of(ask.Cue)
	level, _ := levelOf(ask.Cue, &rating)
	side := slices.Index(s.contrast.Levels, level)
	if s.contrast.Flows != nil {
		ask, margin = Ask{Kind: quiz.AskFlow}, rating.Margins.Flow
		side = slices.Index(s.contrast.Flows, rating.Flow)
	} else if rating.Flow != engine.FlowOut && rating.Flow != engine.FlowBoth {
		side = -1
	}
	if !s.wants(side) || margin < ask.least() && !w.test {
		return -1, 0, nil
	}
	return side, margin, nil
}

// wants reports whether a side has not been found yet.
func (s *pairSearch) wants(side int) bool { return side >= 0 && s.sides[side] == nil }

// offers reports whether the family can show a contrast, whichever way round.
func (f *Family) offers(c quiz.Contrast) bool {
	return slices.ContainsFunc(f.Pairs, func(own quiz.Contrast) bool {
		return own.Cue == c.Cue && sameTwo(own.Stages, c.Stages) && sameTwo(own.Regimes, c.Regimes) &&
			sameTwo(own.Flows, c.Flows) && sameTwo(own.Levels, c.Levels)
	})
}

func sameTwo[T comparable](a, b []T) bool {
	if len(a) != len(b) {
		return false
	}
	return len(a) == 0 || a[0] == b[0] && a[1] == b[1] || a[0] == b[1] && a[1] == b[0]
}
