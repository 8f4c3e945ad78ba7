package main

import (
	"context"
	"fmt"

	"lintel/server/bench"
)

// runBench measures the promised figures.
func runBench(ctx context.Context, args []string, s streams) int {
	flags := newFlags("bench", s.err)
	var o bench.Options
	flags.BoolVar(&o.JSON, "json", false, "one JSON object a line")
	flags.BoolVar(&o.All, "all", false, "the slow figures too")
	flags.StringVar(&o.Only, "only", "", "one figure by name")
	if code, ok := parse(flags, args, 0); !ok {
		return code
	}
	if err := bench.Run(ctx, bench.Figures(), o, s.out); err != nil {
		fmt.Fprintln(s.err, err)
		return 2
	}
	return 0
}
