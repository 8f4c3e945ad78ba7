// Command server is Lintel: the web app, its API and sockets, and the tool for
// scripts and tests, in one binary. Without a command it serves.
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"strings"
	"syscall"

	"lintel/server/command"
	"lintel/server/commandline"
	"lintel/server/validate"
)

// action runs one command and returns an exit code of server/commandline.
type action func(ctx context.Context, args []string, s streams) int

// streams are where a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// commands lists every command in the order in which help shows them.
var commands = []struct {
	name, does string
	run        action
}{
	{"serve", "serve the web app, API and sockets (the default)", serving(runServe)},
	{"sim", "run a scenario file: [-json|-csv] [-every S] FILE", files(command.Sim)},
	{"read", "read ratings from a file or -: [-json] FILE", files(command.Read)},
	{"drill", "print drill items with their truth: -family F -seed N -n K -json", files(command.Drill)},
	{"bench", "measure the promised figures: [-json] [-all] [-only NAME] [-minutes N]", runBench},
	{"validate", "hold the fire against every published series: a report in Markdown", validating},
	{"backup", "copy the store to a file, while running or not", serving(runBackup)},
	{"restore", "put a backup in place of the store", serving(runRestore)},
	{"compact", "write the store anew, so that nothing erased is left in its free pages; a server does so at its start", serving(runCompact)},
	{"export", "write the records as CSV", serving(runExport)},
	{"instructor", "list the instructors, or make a code for one who forgot: list | reset CALL_SIGN", serving(runInstructor)},
	{"check", "lint the content and verify the store", runCheck},
}

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := dispatch(ctx, os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr})
	stop()
	os.Exit(code)
}

// dispatch runs the named command, or serve when the first word is a flag or
// missing. help NAME is NAME -h.
func dispatch(ctx context.Context, args []string, s streams) int {
	name := "serve"
	switch {
	case len(args) == 1 && slices.Contains(helps, args[0]):
		help(s.out)
		return commandline.Done
	case len(args) > 1 && args[0] == "help":
		name, args = args[1], []string{"-h"}
	case len(args) > 0 && !strings.HasPrefix(args[0], "-"):
		name, args = args[0], args[1:]
	}
	for _, c := range commands {
		if c.name == name {
			return c.run(ctx, args, s)
		}
	}
	fmt.Fprintf(s.err, "lintel: there is no command %q: run help to see them\n", name)
	return commandline.AtFault
}

// helps are the words that ask for the list of commands.
var helps = []string{"help", "-h", "-help", "--help"}

func help(out io.Writer) {
	fmt.Fprintln(out, "Lintel: learn to read smoke. Training only; do not use at an incident.")
	for _, c := range commands {
		fmt.Fprintf(out, "  %-10s %s\n", c.name, c.does)
	}
	fmt.Fprintln(out, "help and a command's name, or the command with -h: its flags.")
}

// files adapts a command that reads files or standard input.
func files(run func(args []string, in io.Reader, out, errOut io.Writer) int) action {
	return func(_ context.Context, args []string, s streams) int { return run(args, s.in, s.out, s.err) }
}

// serving adapts a command that works on the store.
func serving(run func(ctx context.Context, args []string, out, errOut io.Writer) int) action {
	return func(ctx context.Context, args []string, s streams) int { return run(ctx, args, s.out, s.err) }
}

// validating needs the published series, and so a checkout.
func validating(_ context.Context, args []string, s streams) int {
	return validate.RunCommand(args, s.out, s.err)
}
