package bench

import (
	"context"
	"errors"
	"fmt"
	"slices"
)

var (
	class30   = classFigure("class_30", 30)
	class300  = classFigure("class_300", 300)
	class1000 = classFigure("class_1000", 1000)
	class5000 = classFigure("class_5000", 5000)
)

// classFigure is how long a class waits for a step, against a bare hub that
// sends as many bytes to as many phones, as durably.
func classFigure(name string, phones int) Figure {
	return Figure{
		Name: name, Unit: "ratio", Goal: "1.25, or the control ratio's own 90th percentile", Slow: true,
		Measure: func(ctx context.Context) (r Result, err error) {
			h, b, err := both(ctx, phones)
			if err != nil {
				return Result{}, err
			}
			defer func() { err = errors.Join(err, h.close(), b.close()) }()
			bytes := h.phones[0].Bytes()
			var ratios, controls, ours, bare []float64
			for pair := range classPairs + 1 {
				one, first, second, err := pairOf(ctx, h, b, bytes, pair%2 == 0)
				if err != nil {
					return Result{}, err
				}
				if pair == 0 {
					continue // warms both up
				}
				ratios, controls = append(ratios, one/first), append(controls, second/first)
				ours, bare = append(ours, one), append(bare, first)
			}
			allowed := max(classGoal, percentile(controls, 0.9))
			return Result{
				Ours: median(ratios), Control: median(controls), Holds: median(ratios) <= allowed,
				How: fmt.Sprintf("99th percentile from the instructor's act to the last bytes at each of %d phones (%.1f ms, bare hub %.1f ms), durable before it is sent in both, %d bytes a frame; median ratio of %d interleaved pairs; control: the hub against itself, its 90th percentile %.2f",
					phones, median(ours), median(bare), bytes, classPairs, percentile(controls, 0.9)),
			}, nil
		},
	}
}

// both opens a class and a bare hub with as many phones each.
func both(ctx context.Context, phones int) (*hall, *bareHub, error) {
	h, err := openHall(ctx, phones)
	if err != nil {
		return nil, nil, err
	}
	b, err := startBareHub(ctx)
	if err != nil {
		return nil, nil, errors.Join(err, h.close())
	}
	err = errors.Join(h.connect(ctx), b.connect(ctx, phones), h.start(ctx))
	if err == nil {
		_, err = h.sample(ctx, h.phones)
	}
	if err != nil {
		return nil, nil, errors.Join(err, h.close(), b.close())
	}
	return h, b, nil
}

// pairOf samples ours once and the control twice, in one order or the other.
func pairOf(ctx context.Context, h *hall, b *bareHub, bytes int, oursFirst bool) (ours, first, second float64, err error) {
	var faults [3]error
	if oursFirst {
		ours, faults[0] = h.sample(ctx, h.phones)
	}
	first, faults[1] = b.sample(ctx, bytes)
	if !oursFirst {
		ours, faults[0] = h.sample(ctx, h.phones)
	}
	second, faults[2] = b.sample(ctx, bytes)
	return ours, first, second, errors.Join(faults[:]...)
}

func percentile(values []float64, share float64) float64 {
	sorted := slices.Sorted(slices.Values(values))
	return sorted[min(len(sorted)-1, int(share*float64(len(sorted))))]
}
