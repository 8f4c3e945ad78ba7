package validate

import (
	"flag"
	"fmt"
	"io"
	"os"

	"lintel/content"
)

// RunCommand is `validate [-data DIR] [-o FILE] [-lines] [-series NAME]`: it runs
// every published series, or one, through the fire model and prints the report. It returns 0
// when every line of acceptance holds, 1 when one fails or the run does, 2 when
// the arguments are at fault.
func RunCommand(args []string, out, errOut io.Writer) int {
	flags := flag.NewFlagSet("validate", flag.ContinueOnError)
	flags.SetOutput(errOut)
	data := flags.String("data", "", "folder of the published rows (testdata/validation of the source tree)")
	file := flags.String("o", "", "write the report to this file instead")
	lines := flags.Bool("lines", false, "print the lines of acceptance only")
	series := flags.String("series", "", "run this series only, named as its file without .csv")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(errOut, "validate: takes no argument such as %q: use -data, -o, -lines or -series\n", flags.Arg(0))
		return 2
	}
	report, err := runIn(*data, *series)
	if err != nil {
		fmt.Fprintln(errOut, "validate:", err)
		return 1
	}
	if err := publish(report, *file, *lines, out); err != nil {
		fmt.Fprintln(errOut, "validate:", err)
		return 1
	}
	fmt.Fprintf(errOut, "validate: %.0f s of fire in %.1f s\n", report.fireS(), report.Took.Seconds())
	if !report.Validated() {
		return 1
	}
	return 0
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
