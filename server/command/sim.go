package command

import (
	"bufio"
	"errors"
	"flag"
	"io"
	"slices"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/sim"
)

const simUsage = "sim [-json|-csv] [-every S] FILE"

// Sim runs a scenario file and prints its time series: text for a person, JSON
// in the shape of engine.Series, or CSV (see writeCSV).
func Sim(args []string, in io.Reader, out, errOut io.Writer) int {
	flags := flag.NewFlagSet("sim", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print JSON")
	asCSV := flags.Bool("csv", false, "print CSV")
	every := flags.Float64("every", 1, "seconds between rows")
	rest, err := words(flags, args)
	if err == nil {
		err = checkSim(rest, *asJSON && *asCSV, *every)
	}
	if err != nil {
		return help(out, errOut, "sim", simUsage, err)
	}
	scenario, series, err := play(rest[0], in, *every)
	if err != nil {
		return fail(errOut, "sim", rest[0], err)
	}
	err = print(out, func(w *bufio.Writer) error {
		switch {
		case *asJSON:
			return printJSON(w, series)
		case *asCSV:
			return writeCSV(w, scenario, series)
		}
		return writeSeries(w, scenario, series)
	})
	if err != nil {
		return fail(errOut, "sim", "output", err)
	}
	return done
}

func checkSim(rest []string, twoForms bool, every float64) error {
	switch {
	case len(rest) != 1:
		return errors.New("give one scenario file, or - for standard input")
	case twoForms:
		return errors.New("choose one of -json and -csv")
	case !(every >= 0.1 && every <= engine.MaxEndS):
		return errors.New("give -every as seconds from 0.1")
	}
	return nil
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
