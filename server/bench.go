package main

import (
	"context"
	"fmt"
	"time"

	"lintel/server/bench"
	"lintel/server/commandline"
)

// mostMinutes is a month: more is a slip.
const mostMinutes = 31 * 24 * 60

// runBench measures the promised figures.
func runBench(ctx context.Context, args []string, s streams) int {
	line := commandline.New("bench [-json] [-all] [-only NAME] [-minutes N]", s.out, s.err)
	var o bench.Options
	line.BoolVar(&o.JSON, "json", false, "one JSON object a line")
	line.BoolVar(&o.All, "all", false, "the slow figures too")
	line.StringVar(&o.Only, "only", "", "one figure by name")
	minutes := line.Float64("minutes", 0, "work for so long on the long runs instead, from where the last one stopped")
	if code, over := line.None(args); over {
		return code
	}
	var err error
	switch {
	case *minutes == 0:
		err = bench.Run(ctx, bench.Figures(), o, s.out)
	case *minutes > 0 && *minutes <= mostMinutes:
		err = bench.RunLong(ctx, bench.Figures(), o.Only, time.Duration(*minutes*float64(time.Minute)), s.out)
	default:
		return line.Wrong(fmt.Sprintf("give -minutes as a number up to %d", mostMinutes))
	}
	if err != nil {
		return line.Fail(err)
	}
	return commandline.Done
}
