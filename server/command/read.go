package command

import (
	"bufio"
	"io"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/engine/infer"
	"lintel/server/commandline"
)

// Read reads a readings file and prints the finding: text for a person, or JSON
// in the shape of engine.Finding.
func Read(args []string, in io.Reader, out, errOut io.Writer) int {
	line := commandline.New("read [-json] FILE (- for standard input)", out, errOut)
	asJSON := line.Bool("json", false, "print JSON")
	path, code, over := line.One(args, "one readings file, or - for standard input")
	if over {
		return code
	}
	var readings engine.Readings
	err := file(path, in, &readings)
	if err == nil {
		err = readings.Validate()
	}
	if err != nil {
		return line.FailAt(path, err)
	}
	finding := infer.Read(content.Rules(), readings)
	wording.Finding(&finding)
	err = print(out, *asJSON, func(w *bufio.Writer) error {
		if *asJSON {
			return printJSON(w, finding)
		}
		writeFinding(w, finding)
		return nil
	})
	if err != nil {
		return line.FailAt("output", err)
	}
	return commandline.Done
}
