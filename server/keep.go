package main

import (
	"context"
	"fmt"
	"io"
	"strings"
	"time"

	"lintel/server/commandline"
	"lintel/server/keep"
	"lintel/server/store"
)

// runBackup copies the store to a new file, while a server runs or not.
func runBackup(ctx context.Context, args []string, out, errOut io.Writer) int {
	line := commandline.New("backup [-data FOLDER] FILE", out, errOut)
	data := dataFlag(line)
	to, code, over := line.One(args, "the name of a new file")
	if over {
		return code
	}
	swept, census, err := keep.Backup(ctx, *data, to)
	if len(swept) > 0 {
		fmt.Fprintf(out, "removed %s: half a backup that was stopped before its end\n", strings.Join(swept, ", "))
	}
	if err != nil {
		return line.Fail(err)
	}
	fmt.Fprintf(out, "wrote %s: %s\n", to, count(census))
	return commandline.Done
}

// runRestore puts a backup in place of the store, which no server may hold.
func runRestore(_ context.Context, args []string, out, errOut io.Writer) int {
	line := commandline.New("restore [-data FOLDER] FILE", out, errOut)
	data := dataFlag(line)
	from, code, over := line.One(args, "the file of a backup")
	if over {
		return code
	}
	kept, census, err := keep.Restore(from, *data, time.Now())
	if err != nil {
		return line.Fail(err)
	}
	fmt.Fprintf(out, "restored %s: %s\n", from, count(census))
	if kept != "" {
		fmt.Fprintf(out, "the store that was there is kept as %s\n", kept)
	}
	return commandline.Done
}

// runCompact writes the store anew, which no server may hold.
func runCompact(_ context.Context, args []string, out, errOut io.Writer) int {
	line := commandline.New("compact [-data FOLDER]", out, errOut)
	data := dataFlag(line)
	if code, over := line.None(args); over {
		return code
	}
	before, after, err := keep.Compact(*data)
	if err != nil {
		return line.Fail(err)
	}
	fmt.Fprintf(out, "compacted: %d KB, %d KB before; nothing that was erased is left in the file (older backups may hold it)\n", after>>10, before>>10)
	return commandline.Done
}

// runExport writes every record to a new file or to standard output.
func runExport(ctx context.Context, args []string, out, errOut io.Writer) int {
	line := commandline.New("export [-data FOLDER] [-jsonl]", out, errOut)
	data := dataFlag(line)
	lines := line.Bool("jsonl", false, "write JSON lines with everything, instead of CSV")
	if code, over := line.None(args); over {
		return code
	}
	if err := keep.Export(ctx, *data, *lines, out); err != nil {
		return line.Fail(err)
	}
	return commandline.Done
}

func count(c store.Census) string {
	return fmt.Sprintf("%d devices, %d events, %d answers, %d of them checked, %d classes with %d entries", c.Devices, c.Events, c.Answers, c.Checked, c.Classes, c.Lines)
}
