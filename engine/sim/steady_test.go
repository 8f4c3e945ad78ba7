package sim_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A starved fire that burns at a floor hole does so steadily: its level does not
// swing about its mean every few seconds. Box with plenty of wood, lower port partly
// open, floor hole, inner door and upper port open.
func TestAFireAtAHoleBurnsSteadily(t *testing.T) {
	for _, port := range []float64{0.1, 0.2, 0.5} {
		sc := box(t)
		sc.Fuels[0].MassKg = ptr(6)
		b := light(t, sc).to(110)
		b.set("port_lower_left", port).set("floor_hole", 1).set("port_upper_left", 1).set("door_lower", 1).to(220)
		low, high, mean := math.Inf(1), 0.0, 0.0
		for range 100 {
			b.to(b.TimeS() + 0.2)
			kW := b.Model().HRR / 1000
			low, high, mean = math.Min(low, kW), math.Max(high, kW), mean+kW/100
		}
		t.Logf("port %.1f open: %.0f kW, %.0f to %.0f within 20 s", port, mean, low, high)
		assert.Less(t, (high-low)/mean, 0.35, "port %.1f", port)
	}
}
