package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"time"

	"lintel/server/keep"
	"lintel/server/store"
)

// runBackup copies the store to a new file, while a server runs or not.
func runBackup(ctx context.Context, args []string, out, errOut io.Writer) int {
	flags := newFlags("backup", errOut)
	data := dataFlag(flags)
	if code, ok := parse(flags, args, 1); !ok {
		return code
	}
	census, err := keep.Backup(ctx, *data, flags.Arg(0))
	if err != nil {
		return failed(err, errOut)
	}
	fmt.Fprintf(out, "wrote %s: %s\n", flags.Arg(0), count(census))
	return 0
}

// runRestore puts a backup in place of the store, which no server may hold.
func runRestore(_ context.Context, args []string, out, errOut io.Writer) int {
	flags := newFlags("restore", errOut)
	data := dataFlag(flags)
	if code, ok := parse(flags, args, 1); !ok {
		return code
	}
	if err := os.MkdirAll(*data, 0o700); err != nil {
		return failed(err, errOut)
	}
	kept, census, err := keep.Restore(flags.Arg(0), *data, time.Now())
	if err != nil {
		return failed(err, errOut)
	}
	fmt.Fprintf(out, "restored %s: %s\n", flags.Arg(0), count(census))
	if kept != "" {
		fmt.Fprintf(out, "the store that was there is kept as %s\n", kept)
	}
	return 0
}

// runCompact writes the store anew, which no server may hold.
func runCompact(_ context.Context, args []string, out, errOut io.Writer) int {
	flags := newFlags("compact", errOut)
	data := dataFlag(flags)
	if code, ok := parse(flags, args, 0); !ok {
		return code
	}
	before, after, err := keep.Compact(*data)
	if err != nil {
		return failed(err, errOut)
	}
	fmt.Fprintf(out, "compacted: %d KB, %d KB before; nothing that was erased is left in the file (older backups may hold it)\n", after>>10, before>>10)
	return 0
}

// runExport writes every record to a new file or to standard output.
func runExport(ctx context.Context, args []string, out, errOut io.Writer) int {
	flags := newFlags("export", errOut)
	data := dataFlag(flags)
	lines := flags.Bool("jsonl", false, "write JSON lines with everything, instead of CSV")
	if code, ok := parse(flags, args, 0); !ok {
		return code
	}
	if err := keep.Export(ctx, *data, *lines, out); err != nil {
		return failed(err, errOut)
	}
	return 0
}

func count(c store.Census) string {
	return fmt.Sprintf("%d devices, %d events, %d answers, %d of them checked, %d classes with %d entries", c.Devices, c.Events, c.Answers, c.Checked, c.Classes, c.Lines)
}
