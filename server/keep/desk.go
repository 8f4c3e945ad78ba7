package keep

import (
	"encoding/json"

	"lintel/quiz"
)

// exported are the kinds of doc that an export holds: not keys, of an instructor not
// the pass phrase, and of a class not what opens it.
var exported = []quiz.DocKind{quiz.RosterDoc, quiz.SetDoc, quiz.ClassDoc}

// exportDesk writes what instructors keep, one JSON object a line, each under
// the word that says what it is.
func exportDesk(s quiz.Store, lines *json.Encoder) error {
	if err := exportInstructors(s, lines); err != nil {
		return err
	}
	for _, kind := range exported {
		err := eachDoc(s, kind, func(d quiz.Doc) (err error) {
			if kind != quiz.ClassDoc {
				return lines.Encode(map[string]quiz.Doc{"doc": d})
			}
			if d.Body, err = keyless(d.Body); err != nil {
				return err
			}
			if err := lines.Encode(map[string]quiz.Doc{"doc": d}); err != nil {
				return err
			}
			return eachLine(s, d.ID, func(l quiz.Line) error { return lines.Encode(map[string]quiz.Line{"line": l}) })
		})
		if err != nil {
			return err
		}
	}
	return eachDeed(s, func(d quiz.Deed) error { return lines.Encode(map[string]quiz.Deed{"deed": d}) })
}

// classKeys are what opens a class that is going on: its doors, its wall and the
// digests of the phones that lead it.
var classKeys = []string{"token", "code", "projector", "leads"}

// keyless is a class's doc without them.
func keyless(body quiz.Raw) (quiz.Raw, error) {
	var fields map[string]json.RawMessage
	if err := json.Unmarshal(body, &fields); err != nil {
		return nil, err
	}
	for _, name := range classKeys {
		delete(fields, name)
	}
	return json.Marshal(fields)
}

func exportInstructors(s quiz.Store, lines *json.Encoder) error {
	return eachDoc(s, quiz.InstructorDoc, func(d quiz.Doc) error {
		var row struct {
			Instructor quiz.Instructor `json:"instructor"`
		}
		if err := json.Unmarshal(d.Body, &row); err != nil {
			return err
		}
		return lines.Encode(row)
	})
}

func eachDoc(s quiz.Store, kind quiz.DocKind, visit func(quiz.Doc) error) error {
	for after := ""; ; {
		docs, err := s.Docs(kind, after, page)
		if err != nil || len(docs) == 0 {
			return err
		}
		for _, d := range docs {
			if err := visit(d); err != nil {
				return err
			}
		}
		after = docs[len(docs)-1].ID
	}
}

func eachLine(s quiz.Store, class string, visit func(quiz.Line) error) error {
	for after := uint64(0); ; {
		lines, err := s.Lines(class, after, page)
		if err != nil || len(lines) == 0 {
			return err
		}
		for _, l := range lines {
			if err := visit(l); err != nil {
				return err
			}
		}
		after = lines[len(lines)-1].Seq
	}
}

// eachDeed visits the deeds, newest first.
func eachDeed(s quiz.Store, visit func(quiz.Deed) error) error {
	for before := uint64(0); ; {
		deeds, err := s.Deeds(before, page)
		if err != nil || len(deeds) == 0 {
			return err
		}
		for _, d := range deeds {
			if err := visit(d); err != nil {
				return err
			}
		}
		if before = deeds[len(deeds)-1].Seq; before == 1 {
			return nil
		}
	}
}
