package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"os"
	"path/filepath"
	"time"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/pwa"
	"lintel/server/serve"
)

// runServe serves until ctx ends.
func runServe(ctx context.Context, args []string, out, errOut io.Writer) int {
	flags := newFlags("serve", errOut)
	addr := flags.String("addr", fromEnv("LINTEL_ADDR", serve.DefaultAddr), "host:port to listen on; :8080 lets phones on the network in (LINTEL_ADDR)")
	data := dataFlag(flags)
	verbose := flags.Bool("v", false, "log every request")
	if code, ok := parse(flags, args, 0); !ok {
		return code
	}
	level := slog.LevelInfo
	if *verbose {
		level = slog.LevelDebug
	}
	m, err := serve.Run(serve.Config{
		Addr: *addr, Data: *data,
		Site: pwa.Site(), Engine: engine.Version, Content: content.Version, Validated: engine.FireValidated, Score: wording.Score,
		Log: slog.New(slog.NewJSONHandler(errOut, &slog.HandlerOptions{Level: level})), Now: time.Now,
	})
	if err != nil {
		return failed(err, errOut)
	}
	fmt.Fprint(out, serve.Welcome(m.Addr(), isTerminal(out)))
	select {
	case <-ctx.Done():
	case err = <-m.Failed():
	}
	if err = errors.Join(err, m.Close()); err != nil {
		return failed(err, errOut)
	}
	return 0
}

// isTerminal reports whether a person is looking at out.
func isTerminal(out io.Writer) bool {
	file, ok := out.(*os.File)
	if !ok {
		return false
	}
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// newFlags reports mistakes to the caller instead of ending the program.
func newFlags(name string, errOut io.Writer) *flag.FlagSet {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(errOut)
	return flags
}

// usualData is where records live unless told otherwise: the person's own
// configuration folder, so that a checkout stays clean, or the working folder
// where there is none.
func usualData() string {
	folder, err := os.UserConfigDir()
	if err != nil {
		return "lintel-data"
	}
	return filepath.Join(folder, "lintel")
}

func dataFlag(flags *flag.FlagSet) *string {
	return flags.String("data", fromEnv("LINTEL_DATA", usualData()), "folder of the store (LINTEL_DATA)")
}

func fromEnv(name, usual string) string {
	if value := os.Getenv(name); value != "" {
		return value
	}
	return usual
}

// parse reads flags and insists on that many further arguments. When it says
// no, the code is the one to exit with.
func parse(flags *flag.FlagSet, args []string, further int) (code int, ok bool) {
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return 0, false
	case err != nil:
		return 2, false
	}
	if flags.NArg() != further {
		fmt.Fprintf(flags.Output(), "%s takes %d file names, %d were given: see %s -h\n", flags.Name(), further, flags.NArg(), flags.Name())
		return 2, false
	}
	return 0, true
}

// failed prints one line and returns 2 for what the person can mend, else 1.
func failed(err error, errOut io.Writer) int {
	fmt.Fprintln(errOut, err)
	var problem *engine.Problem
	if errors.As(err, &problem) {
		return 2
	}
	return 1
}
