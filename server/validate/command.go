package validate

import (
	"fmt"
	"io"
	"os"

	"lintel/content"
	"lintel/server/commandline"
)

// RunCommand runs every published series, or one, through the fire model and prints
// the report. It returns 0 when every line of acceptance holds, 1 when one fails or
// the run does, 2 when the arguments are at fault.
func RunCommand(args []string, out, errOut io.Writer) int {
	line := commandline.New("validate [-data DIR] [-o FILE] [-lines] [-series NAME]", out, errOut)
	data := line.String("data", "", "folder of the published rows (testdata/validation of the source tree)")
	file := line.String("o", "", "write the report to this file instead")
	lines := line.Bool("lines", false, "print the lines of acceptance only")
	series := line.String("series", "", "run this series only, named as its file without .csv")
	if code, over := line.None(args); over {
		return code
	}
	report, err := runIn(*data, *series)
	if err == nil {
		err = publish(report, *file, *lines, out)
	}
	if err != nil {
		return line.Fail(err)
	}
	fmt.Fprintf(errOut, "validate: %.0f s of fire in %.1f s\n", report.fireS(), report.Took.Seconds())
	if !report.Validated() {
		return commandline.Failed
	}
	return commandline.Done
}

func runIn(folder, series string) (Report, error) {
	if folder == "" {
		var err error
		if folder, err = DataFolder(); err != nil {
			return Report{}, err
		}
	}
	return RunFrom(folder, series, content.Library())
}

func publish(report Report, file string, lines bool, out io.Writer) error {
	switch {
	case file != "":
		return os.WriteFile(file, []byte(report.Markdown()), 0o644)
	case lines:
		for _, s := range report.Series {
			for _, l := range s.Lines {
				if _, err := fmt.Fprintf(out, "%-9s %s: %s (%s)\n", map[bool]string{true: "holds", false: "FAILS"}[l.Holds], l.Series, l.Asks, l.Found); err != nil {
					return err
				}
			}
		}
		return nil
	}
	_, err := io.WriteString(out, report.Markdown())
	return err
}

func (r Report) fireS() float64 {
	sum := 0.0
	for _, s := range r.Series {
		sum += s.FireS
	}
	return sum
}
