package main

import (
	"context"
	"fmt"
	"io"

	"lintel/server/commandline"
	"lintel/server/keep"
)

// runInstructor is for the keeper of a server: it lists the instructors, or makes
// a one-time code for one who forgot the pass phrase. While a server runs or not.
func runInstructor(ctx context.Context, args []string, out, errOut io.Writer) int {
	line := commandline.New(`instructor [-data FOLDER] list | reset CALL_SIGN`, out, errOut)
	data := dataFlag(line)
	words, code, over := line.Words(args)
	var err error
	switch {
	case over:
		return code
	case len(words) == 1 && words[0] == "list":
		err = listInstructors(ctx, *data, out)
	case len(words) == 2 && words[0] == "reset":
		err = resetInstructor(ctx, *data, words[1], out)
	default:
		return line.Wrong(`say list, or reset and a call sign, as in reset "Chief 1"`)
	}
	if err != nil {
		return line.Fail(err)
	}
	return commandline.Done
}

func listInstructors(ctx context.Context, data string, out io.Writer) error {
	all, err := keep.Instructors(ctx, data)
	if err != nil {
		return err
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
	return nil
}

func resetInstructor(ctx context.Context, data, callSign string, out io.Writer) error {
	code, until, err := keep.Reset(ctx, data, callSign)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "Code, once, until %s: %s\nWith it %s chooses a new pass phrase on the sign-in page; all their other sign-ins end then.\n",
		until.Format("2006-01-02 15:04"), code, callSign)
	return nil
}
