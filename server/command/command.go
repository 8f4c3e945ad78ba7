// Package command holds the commands that work on files: sim runs a scenario,
// read reads ratings, drill prints items with their truth. Each is a function of
// its arguments and streams and returns the exit code: 0 done, 1 failed, 2 the
// input was at fault. A fault is one line on the error stream that says where,
// what and what to do, and then nothing at all has been written to the output.
package command

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"

	"lintel/engine"
	"lintel/engine/shape"
	"lintel/server/commandline"
	"lintel/server/strictjson"
)

// maxFileBytes bounds a file. Chosen by us: a readings file at every limit of
// its shape takes less.
const maxFileBytes = 16 << 20

// Training opens everything a person reads here and closes nothing.
const Training = "Training only. Do not use at an incident, while responding or while driving."

// notValidated is said beside every output until the fire model has passed its
// validation table.
const notValidated = "The fire model is not yet validated."

// file reads one JSON file, or standard input where path is "-", into dst.
func file(path string, in io.Reader, dst any) error {
	if path != "-" {
		f, err := os.Open(path)
		if err != nil {
			return engine.Bad("", "cannot be opened ("+reason(err)+")", "give the path of a file that this program may read")
		}
		defer f.Close()
		in = f
	}
	tree, err := strictjson.Read(in, maxFileBytes)
	var problem *engine.Problem
	switch {
	case errors.As(err, &problem):
		return err
	case err != nil:
		return engine.Bad("", "cannot be read ("+reason(err)+")", "give a file and not a folder")
	}
	return shape.Decode(tree, dst)
}

// reason is what the system said, without the path that is said already.
func reason(err error) string {
	var path *os.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}

// printJSON writes one line of JSON. Numbers that are not finite become null.
func printJSON(out io.Writer, v any) error {
	return json.NewEncoder(out).Encode(shape.Encode(v))
}

// print runs a writer over buffered output, so that a reader who hangs up is
// one error and not many. What is for a person and no data holds nothing that a
// terminal would obey.
func print(out io.Writer, data bool, write func(*bufio.Writer) error) error {
	if !data {
		out = commandline.Plain(out)
	}
	buffered := bufio.NewWriter(out)
	if err := write(buffered); err != nil {
		return err
	}
	return buffered.Flush()
}

// opening line of a text for a person.
func caution(w *bufio.Writer) {
	fmt.Fprintln(w, Training)
	if !engine.FireValidated {
		fmt.Fprintln(w, notValidated)
	}
	fmt.Fprintln(w)
}
