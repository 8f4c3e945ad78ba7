package main

import (
	"context"
	"fmt"
	"time"

	"lintel/server/bench"
)

// runBench measures the promised figures.
func runBench(ctx context.Context, args []string, s streams) int {
	flags := newFlags("bench", s.err)
	var o bench.Options
	flags.BoolVar(&o.JSON, "json", false, "one JSON object a line")
	flags.BoolVar(&o.All, "all", false, "the slow figures too")
	flags.StringVar(&o.Only, "only", "", "one figure by name")
	minutes := flags.Float64("minutes", 0, "work for so long on the long runs instead, from where the last one stopped")
	if code, ok := parse(flags, args, 0); !ok {
		return code
	}
	if *minutes > 0 {
		return longRun(ctx, o.Only, time.Duration(*minutes*float64(time.Minute)), s)
	}
	if err := bench.Run(ctx, bench.Figures(), o, s.out); err != nil {
		fmt.Fprintln(s.err, err)
		return 2
	}
	return 0
}

func longRun(ctx context.Context, only string, total time.Duration, s streams) int {
	if err := bench.RunLong(ctx, bench.Figures(), only, total, s.out); err != nil {
		fmt.Fprintln(s.err, err)
		return 2
	}
	return 0
}
