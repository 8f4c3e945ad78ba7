package cue

import "math"

// Scale cuts one measure into levels. Base is the level below the first cut.
// Hysteresis is the share by which a measure must pass a cut before a level
// that was already given changes, so that a rating does not flicker.
type Scale struct {
	Base       int       `json:"base"`
	Cuts       []float64 `json:"cuts"`
	Hysteresis float64   `json:"hysteresis"`
}

// Scales holds every cut point. content/scales gives each its derivation.
type Scales struct {
	Volume   Scale `json:"volume"`
	Velocity Scale `json:"velocity"`
	Density  Scale `json:"density"`
	Darkness Scale `json:"darkness"`

	Still     float64 `json:"still"`      // below this flow there is none
	OneWay    float64 `json:"one_way"`    // below this share the weaker flow is not seen
	Reynolds  float64 `json:"reynolds"`   // below this the outflow cannot churn
	Churning  float64 `json:"churning"`   // above this it does
	Pulsing   float64 `json:"pulsing"`    // reversals a minute
	Vanishes  float64 `json:"vanishes"`   // steam's share of the extinction
	Tongues   float64 `json:"tongues"`    // kW/m^(5/2)
	FlameFull float64 `json:"flame_full"` // kW/m^(5/2)
	Brown     float64 `json:"brown"`      // tint above which a pale grey is named brown
	Yellow    float64 `json:"yellow"`     // tint above which it is named yellowish
}

// fresh says that no level was given before.
const fresh = -1

// level counts the cuts that x has passed. A level given before holds until x
// is past the cut by the hysteresis.
func (s *Scale) level(x float64, before int) int {
	level := s.Base
	for i, cut := range s.Cuts {
		switch {
		case before == fresh:
		case before > s.Base+i:
			cut = float64(cut * (1 - s.Hysteresis))
		default:
			cut = float64(cut * (1 + s.Hysteresis))
		}
		if x >= cut {
			level = s.Base + i + 1
		}
	}
	return level
}

// margin is the smallest share by which x could be wrong and lie across a cut:
// 0 on a cut, 1 where no change of size would reach one.
func (s *Scale) margin(x float64) float64 {
	least := 1.0
	for _, cut := range s.Cuts {
		least = math.Min(least, apart(x, cut))
	}
	return least
}

// apart is how far x lies from cut, as 1 − smaller/larger.
func apart(x, cut float64) float64 {
	if x <= 0 || cut <= 0 {
		return 1
	}
	return 1 - math.Min(x, cut)/math.Max(x, cut)
}
