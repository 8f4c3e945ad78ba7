package bench

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"
)

const (
	soakPhones  = 300
	soakMinutes = 3
	soakGrowth  = 1.10 // of memory or descriptors from the second fifth of the time to the last
)

// classSoak is a class that goes on and on, with cuts. Control: the same server
// in the first part of the same run.
var classSoak = Figure{
	Name: "class_soak", Unit: "ratio", Goal: "flat: memory and descriptors within 1.10 over three minutes; two hours in the long run", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		memory, files, err := soak(ctx, soakMinutes*time.Minute)
		if err != nil {
			return Result{}, err
		}
		return Result{
			Ours: map[string]float64{"memory": memory, "descriptors": files}, Control: 1.0,
			Holds: memory <= soakGrowth && files <= soakGrowth,
			How:   fmt.Sprintf("%d phones for %d minutes, six acts a second and a cut each tenth; median of the last fifth over that of the second; control: no growth", soakPhones, soakMinutes),
		}, nil
	},
	Long: &Long{
		Goal: 120, Unit: "minutes", Slice: 120 * time.Minute,
		Stamp: stampOf("server/live/room.go", "server/live/rooms.go", "server/live/viewer.go", "server/live/socket.go", "server/live/waiting.go",
			"server/handover/handover.go", "server/handover/ahead.go", "server/class/room.go", "go.mod"),
		Run: func(ctx context.Context, from uint64) (uint64, error) {
			began, until := time.Now(), 120*time.Minute
			if end, ok := ctx.Deadline(); ok {
				until = min(until, time.Until(end))
			}
			memory, files, err := soak(context.WithoutCancel(ctx), until)
			if err == nil && (memory > soakGrowth || files > soakGrowth) {
				err = fmt.Errorf("memory grew to %.2f, descriptors to %.2f of the first part", memory, files)
			}
			// One run counts by itself: flat for ten minutes twelve times is not flat for two hours.
			return max(from, uint64(time.Since(began)/time.Minute)), err
		},
	},
}

func soak(ctx context.Context, total time.Duration) (memory, files float64, err error) {
	h, err := openHall(ctx, soakPhones)
	if err != nil {
		return 0, 0, err
	}
	defer func() { err = errors.Join(err, h.close()) }()
	if err := errors.Join(h.connect(ctx), h.start(ctx)); err != nil {
		return 0, 0, err
	}
	var kib, open []float64
	pid := h.server.cmd.Process.Pid
	for began := time.Now(); time.Since(began) < total; {
		// A class takes a step back and forth now and then, so that its log stays short.
		if _, err := h.cutting(ctx, 20); err != nil {
			return 0, 0, err
		}
		time.Sleep(time.Second)
		if err := h.freshLook(ctx); err != nil {
			return 0, 0, err
		}
		r, errR := resident(pid)
		d, errD := descriptors(pid)
		if err := errors.Join(errR, errD); err != nil {
			return 0, 0, err
		}
		kib, open = append(kib, float64(r)), append(open, float64(d))
	}
	return lastOverSecond(kib), lastOverSecond(open), nil
}

// freshLook looks at the other scene, so that the end of the look stays near.
func (h *hall) freshLook(ctx context.Context) (err error) {
	h.looked++
	h.seq, err = h.class.Do(ctx, map[string]any{"kind": "stepped", "to": "watch", "scene": h.scenes[h.looked%len(h.scenes)]})
	return err
}

// lastOverSecond compares fifths of a series by their medians; the first is the
// server warming up.
func lastOverSecond(series []float64) float64 {
	fifth := max(1, len(series)/5)
	second, last := series[min(fifth, len(series)-1):min(2*fifth, len(series))], series[len(series)-fifth:]
	if len(second) == 0 {
		second = series[:1]
	}
	return median(slices.Clone(last)) / median(slices.Clone(second))
}
