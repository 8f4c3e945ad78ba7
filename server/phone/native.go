package phone

import (
	"slices"
	"time"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/infer"
)

// ReadNative times readings on this machine, without the phone's engine: the
// control for its reading time.
func ReadNative(readings engine.Readings, calls int) Timing {
	return timed(calls, func(int) error {
		infer.Read(content.Rules(), readings)
		return nil
	})
}

// timed runs a call again and again, until one fails.
func timed(calls int, call func(i int) error) Timing {
	took := make([]float64, 0, calls)
	for i := range calls {
		began := time.Now()
		if call(i) != nil {
			break
		}
		took = append(took, float64(time.Since(began).Nanoseconds())/1e6)
	}
	return timing(took)
}

func timing(took []float64) Timing {
	if len(took) == 0 {
		return Timing{}
	}
	slices.Sort(took)
	return Timing{
		Calls:    len(took),
		MedianMS: took[len(took)/2],
		P95MS:    took[len(took)*95/100],
		MostMS:   took[len(took)-1],
	}
}
