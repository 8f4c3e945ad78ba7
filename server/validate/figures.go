package validate

import (
	"fmt"
	"math"
)

// Figure is one promised figure with its control, in the shape that the bench
// prints: Ours and Control hold named numbers.
type Figure struct {
	Ours    map[string]float64
	Control map[string]float64
	Holds   bool
	How     string
}

// untuned gathers the counting points of a quantity over the series that
// nothing in the model was set with in view.
func (r Report) untuned(q *Quantity) []Point { return r.gather(q, false) }

func (r Report) gather(q *Quantity, tuned bool) []Point {
	var list []Point
	for i := range r.Series {
		if (r.Series[i].Tuned != "") == tuned {
			list = append(list, r.Series[i].points(q)...)
		}
	}
	return list
}

// LayerTemp is the scatter and bias of the hot layer's temperature rise over the
// untuned series; the control is the one-line hand correlation on the rows that
// have one, with the model on those same rows beside it.
func (r Report) LayerTemp() Figure {
	points := r.untuned(&LayerRise)
	f := scatterFigure(points, 0.35)
	hand := scatterIn(points, true)
	same := scatterIn(withHand(points), false)
	f.Control = told(map[string]float64{
		"hand_scatter": rounded(hand.Model), "hand_bias": rounded(hand.Bias), "hand_points": float64(hand.Points),
		"ours_same_scatter": rounded(same.Model), "ours_same_bias": rounded(same.Bias), "mature_scatter": 0.35, "mature_bias": 1.02,
	})
	return f
}

// LayerDepth is the same for the layer's depth in open rooms. The control is
// the published figure of mature zone models; there is no one-line correlation.
func (r Report) LayerDepth() Figure {
	f := scatterFigure(r.untuned(&LayerDepth), 0.19)
	f.Control = map[string]float64{"mature_scatter": 0.19, "mature_bias": 0.95}
	return f
}

func scatterFigure(points []Point, most float64) Figure {
	s := scatterIn(points, false)
	return Figure{
		Ours:  told(map[string]float64{"scatter": rounded(s.Model), "bias": rounded(s.Bias), "points": float64(s.Points)}),
		Holds: s.Model <= most && s.Bias >= 0.85 && s.Bias <= 1.15,
		How:   fmt.Sprintf("log-ratio statistics over %d rows of the series not used for tuning", s.Points),
	}
}

// SmallBox is the two-storey box: the share of rows whose temperature rise is
// within 25 %, of interfaces within 0.08 m, and whether every direction is right.
func (r Report) SmallBox() Figure {
	f := Figure{Ours: map[string]float64{}, Control: map[string]float64{}, Holds: true, How: "two-storey box of 1.2 m, every row from 300 s"}
	for i := range r.Series {
		s := &r.Series[i]
		if s.ID != "nist_vent_study_layers" {
			continue
		}
		rise, depth := s.points(&LayerRise), s.points(&LayerDepth)
		ours, hand := scatterIn(rise, false), scatterIn(rise, true)
		f.Ours["rise_within_25"] = rounded(within(rise, 0.75, 1.25))
		f.Ours["rise_bias"], f.Ours["rise_scatter"] = rounded(ours.Bias), rounded(ours.Model)
		f.Ours["interface_within_0.08"] = rounded(near(depth, 0.08))
		f.Ours["directions_right"] = s.Directions
		f.Control["hand_rise_bias"], f.Control["hand_rise_scatter"] = rounded(hand.Bias), rounded(hand.Model)
		f.Control["hand_points"] = float64(hand.Points)
		f.Ours, f.Control = told(f.Ours), told(f.Control)
		f.Holds = s.Directions == 1 && within(rise, 0.75, 1.25) == 1
		return f
	}
	f.Holds = false
	return f
}

// told leaves out what could not be measured, which no JSON can hold.
func told(numbers map[string]float64) map[string]float64 {
	for name, x := range numbers {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			delete(numbers, name)
		}
	}
	return numbers
}

func withHand(points []Point) []Point {
	var list []Point
	for _, p := range points {
		if p.Hand > 0 {
			list = append(list, p)
		}
	}
	return list
}

// Validated reports whether every line of acceptance holds, which is what takes
// the "not yet validated" flag off.
func (r Report) Validated() bool {
	for _, s := range r.Series {
		for _, l := range s.Lines {
			if !l.Holds && !l.Further {
				return false
			}
		}
	}
	return len(r.Series) > 0
}
