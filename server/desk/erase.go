package desk

import "lintel/quiz"

// Erase takes a device out of the store, out of the seats it held, and, by lines
// that the caller made nameless, out of the logs of classes.
func (d *Desk) Erase(device string, lines []quiz.Line) error {
	var docs []quiz.Doc
	err := d.rosters().each(func(row held[roster]) error {
		changed := false
		for i := range row.value.Seats {
			s := &row.value.Seats[i]
			kept := s.Claims[:0:0]
			for _, c := range s.Claims {
				if c.Device == device {
					changed = true
					continue
				}
				kept = append(kept, c)
			}
			s.Claims = kept
		}
		if !changed {
			return nil
		}
		doc, err := d.rosters().doc(row)
		docs = append(docs, doc)
		return err
	})
	if err != nil {
		return err
	}
	return d.store.Erase(device, lines, quiz.Deed{By: "phone", Did: "erase", What: "a device, at its owner's wish"}, docs...)
}
