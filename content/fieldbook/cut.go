package fieldbook

import (
	"lintel/engine"
	"lintel/engine/cue"
)

// CutPoints gathers the numbers of the book as the engine takes them. It fails
// on a cue or threshold that is missing or unknown.
func (b *ScaleBook) CutPoints() (cue.Scales, error) {
	var s cue.Scales
	ordinal := map[engine.Cue]*cue.Scale{
		engine.CueVolume: &s.Volume, engine.CueVelocity: &s.Velocity,
		engine.CueDensity: &s.Density, engine.CueDarkness: &s.Darkness,
	}
	for _, words := range b.Scales {
		scale := ordinal[words.Cue]
		if scale == nil {
			return s, engine.Bad("scales "+string(words.Cue), "is unknown or given twice", "give each ordinal cue once")
		}
		*scale = words.scale()
		delete(ordinal, words.Cue)
	}
	for missing := range ordinal {
		return s, engine.Bad("scales", "lacks "+string(missing), "give each ordinal cue once")
	}
	return s, b.thresholds(&s)
}

func (w *ScaleWords) scale() cue.Scale {
	scale := cue.Scale{Base: w.Base, Hysteresis: w.Hysteresis}
	for _, cut := range w.Cuts {
		scale.Cuts = append(scale.Cuts, cut.At)
	}
	return scale
}

func (b *ScaleBook) thresholds(s *cue.Scales) error {
	fields := map[string]*float64{
		"still": &s.Still, "one_way": &s.OneWay, "reynolds": &s.Reynolds,
		"churning": &s.Churning, "pulsing": &s.Pulsing, "vanishes": &s.Vanishes,
		"tongues": &s.Tongues, "flame_full": &s.FlameFull, "brown": &s.Brown, "yellow": &s.Yellow,
	}
	for _, threshold := range b.Thresholds {
		field := fields[threshold.ID]
		if field == nil {
			return engine.Bad("thresholds "+threshold.ID, "is unknown or given twice", "give each threshold once")
		}
		*field = threshold.At
		delete(fields, threshold.ID)
	}
	for missing := range fields {
		return engine.Bad("thresholds", "lacks "+missing, "give each threshold once")
	}
	return nil
}
