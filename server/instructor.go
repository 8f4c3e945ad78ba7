package main

import (
	"context"
	"fmt"
	"io"

	"lintel/engine"
	"lintel/server/keep"
)

// runInstructor is for the keeper of a server: it lists the instructors, or makes
// a one-time code for one who forgot the pass phrase. While a server runs or not.
func runInstructor(ctx context.Context, args []string, out, errOut io.Writer) int {
	flags := newFlags("instructor", errOut)
	data := dataFlag(flags)
	if err := flags.Parse(args); err != nil {
		return 2
	}
	switch {
	case flags.Arg(0) == "list" && flags.NArg() == 1:
		return listInstructors(ctx, *data, out, errOut)
	case flags.Arg(0) == "reset" && flags.NArg() == 2:
		return resetInstructor(ctx, *data, flags.Arg(1), out, errOut)
	}
	return failed(engine.Bad("instructor", "takes list, or reset and a call sign", `say instructor list, or instructor reset "Chief 1"`), errOut)
}

func listInstructors(ctx context.Context, data string, out, errOut io.Writer) int {
	all, err := keep.Instructors(ctx, data)
	if err != nil {
		return failed(err, errOut)
	}
	for _, i := range all {
		state := ""
		if i.ShutOut {
			state = ", shut out"
		}
		fmt.Fprintf(out, "%s (%s%s)\n", i.CallSign, i.Role, state)
	}
	if len(all) == 0 {
		fmt.Fprintln(out, "none yet: serve prints the set-up code for the first")
	}
	return 0
}

func resetInstructor(ctx context.Context, data, callSign string, out, errOut io.Writer) int {
	code, until, err := keep.Reset(ctx, data, callSign)
	if err != nil {
		return failed(err, errOut)
	}
	fmt.Fprintf(out, "Code, once, until %s: %s\nWith it %s chooses a new pass phrase on the sign-in page; all their other sign-ins end then.\n",
		until.Format("2006-01-02 15:04"), code, callSign)
	return 0
}
