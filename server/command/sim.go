package command

import (
	"bufio"
	"io"
	"slices"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/engine/sim"
	"lintel/server/commandline"
)

// Sim runs a scenario file and prints its time series: text for a person, JSON
// in the shape of engine.Series, or CSV (see writeCSV).
func Sim(args []string, in io.Reader, out, errOut io.Writer) int {
	line := commandline.New("sim [-json|-csv] [-every S] FILE (- for standard input)", out, errOut)
	asJSON := line.Bool("json", false, "print JSON")
	asCSV := line.Bool("csv", false, "print CSV")
	every := line.Float64("every", 1, "seconds between rows")
	path, code, over := line.One(args, "one scenario file, or - for standard input")
	switch {
	case over:
		return code
	case *asJSON && *asCSV:
		return line.Wrong("choose one of -json and -csv")
	case !(*every >= 0.1 && *every <= engine.MaxEndS):
		return line.Wrong("give -every as seconds from 0.1")
	}
	scenario, series, err := play(path, in, *every)
	if err != nil {
		return line.FailAt(path, err)
	}
	err = print(out, *asJSON || *asCSV, func(w *bufio.Writer) error {
		switch {
		case *asJSON:
			return printJSON(w, series)
		case *asCSV:
			return writeCSV(w, scenario, series)
		}
		return writeSeries(w, scenario, series)
	})
	if err != nil {
		return line.FailAt("output", err)
	}
	return commandline.Done
}

// play reads, checks and runs a scenario to its end.
func play(path string, in io.Reader, every float64) (engine.Scenario, engine.Series, error) {
	var scenario engine.Scenario
	if err := file(path, in, &scenario); err != nil {
		return scenario, engine.Series{}, err
	}
	if err := check(scenario); err != nil {
		return scenario, engine.Series{}, err
	}
	series, err := sim.Play(scenario, content.Library(), every)
	wording.Events(series.Events)
	return scenario, series, err
}

// check looks at the kinds first, where each fuel has one: an unknown kind is the
// cause of whatever else is odd about its fuel.
func check(scenario engine.Scenario) error {
	nameless := func(f engine.Fuel) bool { return f.Kind == "" }
	if !slices.ContainsFunc(scenario.Fuels, nameless) {
		if err := scenario.ValidateMaterials(content.Materials()); err != nil {
			return err
		}
	}
	return scenario.Validate()
}
