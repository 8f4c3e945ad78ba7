package validate

import (
	"math"
	"time"
)

// Quantity is something that was measured, with what others make of it.
type Quantity struct {
	Name   string
	Unit   string
	SigmaE float64 // relative standard deviation of the experiments
	Mature string  // published scatter and bias of mature zone models
}

// The relative standard deviations of the experiments and the figures of mature
// zone models are those of a published table (firemodels/cfast, scatter-plot
// output baseline, stored versions; 215 and 228 points for the first two).
// Velocity, neutral plane and flow are not in it: their σ_E is that of a
// velocity, 8 per cent (from memory, to be confirmed), flow as velocity.
var (
	LayerRise   = Quantity{"hot-layer temperature rise", "K", 0.07, "scatter 35 %, bias 1.02 (natural ventilation)"}
	LowerRise   = Quantity{"lower-layer temperature rise", "K", 0.07, ""}
	AboveRise   = Quantity{"hot-layer temperature rise, storey above", "K", 0.07, ""}
	LayerDepth  = Quantity{"layer depth, open rooms", "m", 0.05, "scatter 19 %, bias 0.95"}
	ClosedRise  = Quantity{"hot-layer temperature rise, closed rooms", "K", 0.07, "scatter 12 %, bias 0.93 (no ventilation)"}
	Oxygen      = Quantity{"oxygen", "vol %", 0.08, "scatter 30 %, bias 0.96"}
	OxygenSpent = Quantity{"oxygen used up, open rooms", "vol %", 0.08, "scatter 30 %, bias 0.96"}
	Neutral     = Quantity{"neutral plane above the sill", "m", 0.05, ""}
	Flow        = Quantity{"flow through the opening", "kg/s", 0.08, ""}
	Speed       = Quantity{"speed in the opening", "m/s", 0.08, ""}
	Pressure    = Quantity{"over-pressure", "Pa", 0.23, "scatter 42 %, bias 1.24 (compartment over-pressure)"}
	Extinction  = Quantity{"time to extinction", "s", 0.10, ""}
)

// Point is one measured value beside ours and a hand correlation's, which is
// NaN where there is none.
type Point struct {
	Quantity *Quantity
	Row      string
	Measured float64
	Ours     float64
	Hand     float64
	Apart    string // why it stays out of the statistics; empty when it counts
}

// Line is one line of acceptance, or a further check that the verdict does not
// hang on.
type Line struct {
	Series  string
	Asks    string
	Found   string
	Holds   bool
	Further bool
}

// Series is one set of published experiments and what the model makes of it.
type Series struct {
	ID     string
	Title  string
	Notes  []string // what had to be assumed
	Tuned  string   // what in the model was set with it in view; empty for nothing
	Points []Point
	Lines  []Line
	FireS  float64 // seconds of fire that were run

	Directions float64 // share of the changes that went the right way, where judged
}

// Report is the whole comparison.
type Report struct {
	Series []Series
	Took   time.Duration // not printed: it differs from run to run
}

func (s *Series) add(q *Quantity, row string, measured, ours, hand float64) *Point {
	s.Points = append(s.Points, Point{Quantity: q, Row: row, Measured: measured, Ours: ours, Hand: hand})
	return &s.Points[len(s.Points)-1]
}

func (s *Series) line(holds bool, asks, found string) {
	s.Lines = append(s.Lines, Line{Series: s.ID, Asks: asks, Found: found, Holds: holds})
}

// further is a line beside those of acceptance.
func (s *Series) further(holds bool, asks, found string) {
	s.Lines = append(s.Lines, Line{Series: s.ID, Asks: asks, Found: found, Holds: holds, Further: true})
}

// none is the hand correlation where there is none.
var none = math.NaN()

// points lists those of one quantity that count.
func (s *Series) points(q *Quantity) []Point {
	var list []Point
	for _, p := range s.Points {
		if p.Quantity == q && p.Apart == "" {
			list = append(list, p)
		}
	}
	return list
}

// scatter is ours, or with hand the hand correlation's on the same points.
func scatterIn(points []Point, hand bool) Scatter {
	var model, experiment []float64
	sigma := 0.0
	for _, p := range points {
		value := p.Ours
		if hand {
			value = p.Hand
		}
		if math.IsNaN(value) || math.IsNaN(p.Measured) {
			continue
		}
		model, experiment = append(model, value), append(experiment, p.Measured)
		sigma = p.Quantity.SigmaE
	}
	return scatterOf(model, experiment, sigma)
}

// within is the share of points whose ratio to the measured value lies between
// two bounds.
func within(points []Point, least, most float64) float64 {
	good := 0
	for _, p := range points {
		if ratio := p.Ours / p.Measured; ratio >= least && ratio <= most {
			good++
		}
	}
	return float64(good) / float64(max(1, len(points)))
}

// near is the share of points that lie within a distance of the measured value.
func near(points []Point, distance float64) float64 {
	good := 0
	for _, p := range points {
		if math.Abs(p.Ours-p.Measured) <= distance {
			good++
		}
	}
	return float64(good) / float64(max(1, len(points)))
}

// heatLossTuned is said of the three series in view of whose means the strength
// of convection into the walls was set (engine/zone, strongFilm).
const heatLossTuned = "the strength of convection into the walls and of the cooled flow down along them was set with the means of this series in view; no single row was fitted"
