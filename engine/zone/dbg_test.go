package zone_test

import (
	"fmt"
	"lintel/engine/zone"
	"math"
	"math/rand/v2"
	"testing"
)

func TestDbg(t *testing.T) {
	n := 0
	for seed := range uint64(200) {
		m := build(t, randomHouse(seed))
		r := rand.New(rand.NewPCG(seed, 5))
		shown := false
		for step := range 1200 {
			if step%80 == 79 {
				disturb(m, r)
			}
			tr := m.Tries()
			m.Step(.05)
			e := volumeError(m)
			if e > .03 && !shown && n < 12 {
				shown = true
				n++
				fmt.Printf("seed %d step %d err %.3f tries %d\n", seed, step, e, m.Tries()-tr)
				for i := range m.Rooms {
					q := &m.Rooms[i]
					fmt.Printf("   room %d V %.3f P %.3g Tu %.0f Tl %.0f share %.4f mu %.3g ml %.3g vol err %.3f relief %.2g burn %.3g layer %.3g\n", i, q.Volume, q.Pressure, q.Gas[1].Temp(), q.Gas[0].Temp(), q.Interface()/q.Height, q.Gas[1].Mass, q.Gas[0].Mass, (q.Gas[0].Volume()+q.Gas[1].Volume())/q.Volume-1, q.Out.Relief, q.Out.BurnW, q.Out.LayerW)
				}
				for i := range m.Vents {
					v := &m.Vents[i]
					fmt.Printf("      vent %d %d-%d hor %v open %.2f out %.3g %.3g in %.3g %.3g up %.3g dn %.3g\n", i, v.A, v.B, v.Horizontal, v.Open, v.Flow.Out[0], v.Flow.Out[1], v.Flow.In[0], v.Flow.In[1], v.Exchange.Up, v.Exchange.Down)
				}
			}
		}
	}
	_ = math.Pi
	_ = zone.Kelvin
}
