package command

import (
	"bufio"
	"errors"
	"flag"
	"io"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/engine/infer"
)

const readUsage = "read [-json] FILE (- for standard input)"

// Read reads a readings file and prints the finding: text for a person, or JSON
// in the shape of engine.Finding.
func Read(args []string, in io.Reader, out, errOut io.Writer) int {
	flags := flag.NewFlagSet("read", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print JSON")
	rest, err := words(flags, args)
	if err == nil && len(rest) != 1 {
		err = errors.New("give one readings file, or - for standard input")
	}
	if err != nil {
		return help(out, errOut, "read", readUsage, err)
	}
	var readings engine.Readings
	if err = file(rest[0], in, &readings); err == nil {
		err = readings.Validate()
	}
	if err != nil {
		return fail(errOut, "read", rest[0], err)
	}
	finding := infer.Read(content.Rules(), readings)
	wording.Finding(&finding)
	err = print(out, func(w *bufio.Writer) error {
		if *asJSON {
			return printJSON(w, finding)
		}
		writeFinding(w, finding)
		return nil
	})
	if err != nil {
		return fail(errOut, "read", "output", err)
	}
	return done
}
