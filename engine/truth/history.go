package truth

import "math"

const (
	// SettleS is how long the fire's level and its starving are averaged over,
	// so that one puff does not name a stage. Chosen by us.
	SettleS = 5.0

	// FallShare and RiseShare part falling from rising: a fire falls once it
	// has lost a fifth of its peak and rises once it has gained a quarter on its
	// trough. Between them it keeps its direction. Chosen by us.
	FallShare = 0.80
	RiseShare = 1.25

	// NoiseShare of the flashover estimate: swings smaller than this are none.
	NoiseShare = 0.01
)

// lag is a first-order average over SettleS.
type lag struct {
	value float64
	begun bool
}

func (l *lag) follow(x, dt float64) {
	if !l.begun {
		l.value, l.begun = x, true
		return
	}
	l.value += float64((x - l.value) * (dt / (dt + SettleS)))
}

// swing follows the level of a fire up to its peaks and down to its troughs.
type swing struct {
	level   lag
	peak    float64
	trough  float64
	falling bool
}

func (w *swing) follow(hrr, dt, flashover float64) {
	w.level.follow(hrr, dt)
	level, noise := w.level.value, float64(NoiseShare*flashover)
	if w.falling {
		w.trough = math.Min(w.trough, level)
		if level > float64(RiseShare*w.trough)+noise {
			w.falling, w.peak = false, level
		}
		return
	}
	w.peak = math.Max(w.peak, level)
	if level < float64(FallShare*w.peak) && w.peak > noise {
		w.falling, w.trough = true, level
	}
}

// knockDown remembers how large the fire was when water reached it. Water on what had
// burned out knocks nothing down: a fire below the noise counts for none. Nor does
// water that could not have taken up a few seconds of the fire's heat, or a fall long
// after the last of it: that fire went down for another cause.
type knockDown struct {
	water  float64 // all put in so far, L
	poured float64 // of it, on this fire
	at     float64 // when the last was
	before float64
	down   bool
}

func (k *knockDown) follow(s State, level float64) {
	if s.WaterL > k.water {
		if !k.down && level > float64(NoiseShare*s.FlashoverKW) {
			k.before = math.Max(k.before, level)
		}
		k.poured, k.at = k.poured+(s.WaterL-k.water), s.TS
	}
	k.water = math.Max(k.water, s.WaterL)
	again := float64(RegrowthShare * k.before)
	switch {
	case k.down && level > again && s.HRRKW > again, !k.down && s.TS-k.at > WaterLastsS:
		k.down, k.before, k.poured = false, 0, 0
	case s.HRRKW < float64(KnockDownShare*k.before) && k.poured*WaterHeat > float64(SettleS*k.before):
		k.down = true
	}
}
