package bench

import (
	"context"
	"fmt"
	"runtime"
	"sync"

	"lintel/content"
	"lintel/engine/sim/gauge"
)

const (
	shakenHouses = 2000
	houseBatch   = 200 // houses between two looks at the clock
)

// conservation is the fire's books in random houses with random moves.
var conservation = Figure{
	Name: "conservation", Unit: "relative", Goal: "books 1e-6; volume 0.001 steady and 0.03 at worst; a million houses in the long run",
	Measure: func(context.Context) (Result, error) {
		all, err := shakeAll(0, shakenHouses)
		if err != nil {
			return Result{}, err
		}
		return Result{
			Ours:  map[string]float64{"books": books(all), "volume_steady": all.Steady, "volume_worst": all.Volume},
			Holds: closes(all),
			How:   fmt.Sprintf("worst of mass, every species and enthalpy in %d random houses of 60 s with random moves; %d negative amounts, %d not a number; no control: the books close or they do not", all.Runs, all.Negative, all.NotNumber),
		}, nil
	},
	Long: &Long{
		Goal: 1_000_000, Unit: "random houses",
		// The end states of 500 scenarios to the bit: the physics' own fingerprint.
		Stamp: stampOf("engine/sim/testdata/bits.txt"),
		Run: func(ctx context.Context, from uint64) (uint64, error) {
			for ctx.Err() == nil {
				all, err := shakeAll(from, houseBatch)
				if err != nil {
					return from, err
				}
				if !closes(all) {
					return from, fmt.Errorf("houses %d to %d: %s", from, from+houseBatch-1, all)
				}
				from += houseBatch
			}
			return from, nil
		},
	},
}

func books(a gauge.Audit) float64 { return max(a.Mass, a.Enthalpy, a.Species) }

func closes(a gauge.Audit) bool {
	return books(a) <= 1e-6 && a.Steady <= 0.001 && a.Volume <= 0.03 && a.Negative+a.NotNumber == 0
}

// shakeAll audits the houses of count seeds from first, on every core.
func shakeAll(first, count uint64) (gauge.Audit, error) {
	cores := uint64(runtime.GOMAXPROCS(0))
	audits, faults := make([]gauge.Audit, cores), make([]error, cores)
	var all sync.WaitGroup
	for core := range cores {
		all.Go(func() {
			for seed := first + core; seed < first+count && faults[core] == nil; seed += cores {
				one, err := gauge.Shake(seed, content.Materials())
				if err != nil {
					faults[core] = fmt.Errorf("house %d: %w", seed, err)
				}
				audits[core] = audits[core].Join(one)
			}
		})
	}
	all.Wait()
	var sum gauge.Audit
	for core := range cores {
		if faults[core] != nil {
			return sum, faults[core]
		}
		sum = sum.Join(audits[core])
	}
	return sum, nil
}
