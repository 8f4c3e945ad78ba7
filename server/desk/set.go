package desk

import (
	"lintel/quiz"
	"lintel/quiz/session"
)

// set is a set as kept.
type set struct {
	Title  string            `json:"title"`
	Scenes []session.Planned `json:"scenes"`
}

func (d *Desk) sets() table[set] { return table[set]{d.store, quiz.SetDoc} }

func setShown(row held[set]) session.Set {
	return session.Set{ID: row.id, Title: row.value.Title, Scenes: row.value.Scenes}
}

// Sets lists them.
func (d *Desk) Sets() ([]session.Set, error) {
	all := []session.Set{}
	err := d.sets().each(func(row held[set]) error {
		all = append(all, setShown(row))
		return nil
	})
	return all, err
}

// Set returns one.
func (d *Desk) Set(id string) (session.Set, error) {
	row, err := d.sets().get(id)
	return setShown(row), err
}

// SaveSet makes a set, or with an id changes one.
func (d *Desk) SaveSet(by quiz.Instructor, id, title string, scenes []session.Planned) (session.Set, error) {
	row := held[set]{id: newID()}
	did := "new_set"
	if id != "" {
		known, err := d.sets().get(id)
		if err != nil {
			return session.Set{}, err
		}
		row, did = known, "set"
	}
	if err := session.CheckPlan(title, scenes); err != nil {
		return session.Set{}, err
	}
	row.value = set{Title: title, Scenes: scenes}
	return setShown(row), d.sets().save(quiz.Deed{By: by.CallSign, Did: did, What: title}, row)
}

// DropSet takes a set away; classes that were opened with it keep their scenes.
func (d *Desk) DropSet(by quiz.Instructor, id string) error {
	row, err := d.sets().get(id)
	if err != nil {
		return err
	}
	return d.store.Save(quiz.Deed{By: by.CallSign, Did: "drop_set", What: row.value.Title}, d.sets().gone(row))
}
