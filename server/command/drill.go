package command

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/item"
	"lintel/server/commandline"
)

// mostItems bounds one call, so that a slip of a digit does not run for days.
const mostItems = 10000

// drillLine is one item with its truth, as drill -json prints it on a line.
type drillLine struct {
	V         int             `json:"v"`
	Engine    string          `json:"engine"`
	Family    string          `json:"family"`
	Seed      uint64          `json:"seed"`
	MomentS   float64         `json:"moment_s"`
	Kind      quiz.ItemKind   `json:"kind"`
	Readings  engine.Readings `json:"readings"` // the exact ratings at the moment
	Question  quiz.Question   `json:"question"`
	Truth     item.Truth      `json:"truth"`
	CutMargin float64         `json:"cut_margin"`
}

// Drill prints the items of a family for seeds from -seed on, with their truth.
func Drill(args []string, in io.Reader, out, errOut io.Writer) int {
	line := commandline.New("drill -family F [-seed N] [-n K] [-json]", out, errOut)
	family := line.String("family", "", "family of scenes")
	seed := line.Uint64("seed", 1, "first seed")
	n := line.Int("n", 1, "how many items")
	asJSON := line.Bool("json", false, "print JSON, one item a line")
	code, over := line.None(args)
	switch {
	case over:
		return code
	case *n < 1 || *n > mostItems:
		return line.Wrong(fmt.Sprintf("give -n as a number from 1 to %d", mostItems))
	case *family == "":
		return line.Wrong("name a -family: " + strings.Join(familyIDs(), ", "))
	}
	lines, err := drillLines(*family, *seed, *n)
	if err != nil {
		return line.Fail(err)
	}
	err = print(out, *asJSON, func(w *bufio.Writer) error { return writeDrill(w, lines, *asJSON) })
	if err != nil {
		return line.FailAt("output", err)
	}
	return commandline.Done
}

func familyIDs() []string {
	var ids []string
	for _, f := range content.Families() {
		ids = append(ids, f.ID)
	}
	return ids
}

// drillLines makes every item before any is printed, so that a bad seed at the
// end does not leave half an output behind.
func drillLines(family string, seed uint64, n int) ([]drillLine, error) {
	lines := make([]drillLine, 0, n)
	for k := range uint64(n) {
		made, truth, err := content.Make(family, seed+k)
		if err != nil {
			return nil, err
		}
		wording.Item(&made)
		lines = append(lines, drillLine{
			V: 1, Engine: made.Engine, Family: made.Family, Seed: made.Seed, MomentS: made.MomentS, Kind: made.Kind,
			Readings: truth.Exact, Question: made.Question, Truth: truth, CutMargin: truth.CutMargin,
		})
	}
	return lines, nil
}

func writeDrill(w *bufio.Writer, lines []drillLine, asJSON bool) error {
	if !asJSON {
		caution(w)
	}
	for _, line := range lines {
		if asJSON {
			if err := printJSON(w, line); err != nil {
				return err
			}
			continue
		}
		writeItem(w, line)
	}
	return nil
}

func writeItem(w *bufio.Writer, line drillLine) {
	fmt.Fprintf(w, "%s, seed %d, %.0f s after the start\n%s\n", plain(line.Family), line.Seed, line.MomentS, line.Question.Text)
	if line.Question.Move != nil {
		fmt.Fprintf(w, "  the move: %s\n", describeMove(*line.Question.Move))
	}
	for i, ask := range line.Question.Asks {
		fmt.Fprintf(w, "  %s  %s\n", ask.Text, describeReplies(line.Truth.Accept[i]))
	}
	fmt.Fprintf(w, "  the fire: %s, %s\n", plain(string(line.Truth.Stage)), plain(string(line.Truth.Regime)))
	for _, look := range line.Readings.Looks {
		for _, reading := range look.Openings {
			fmt.Fprintf(w, "  %s\n", describe(reading))
		}
	}
	fmt.Fprintln(w)
}

func describeMove(m engine.Move) string {
	switch {
	case m.Open != nil:
		return fmt.Sprintf("%s to %.0f %% open", plain(m.Opening), 100**m.Open)
	case m.WaterL != nil:
		return fmt.Sprintf("%.3g l of water into %s", *m.WaterL, plain(m.In))
	case m.MassKg != nil:
		return fmt.Sprintf("%.3g kg of %s into %s", *m.MassKg, plain(m.Fuel), plain(m.In))
	case m.WindMS != nil:
		return fmt.Sprintf("wind of %.3g m/s", *m.WindMS)
	}
	return "wind onto side " + string(m.WindFrom)
}

func describeReplies(accept []quiz.Reply) string {
	words := make([]string, len(accept))
	for i, r := range accept {
		words[i] = describeReply(r)
	}
	return strings.Join(words, " or ")
}

func describeReply(r quiz.Reply) string {
	switch {
	case r.Level != nil:
		return fmt.Sprint(*r.Level)
	case r.Plane != nil:
		return fmt.Sprintf("%.2f of the height", *r.Plane)
	}
	return plain(string(r.Flow) + string(r.Stage) + string(r.Regime) + string(r.Change))
}
