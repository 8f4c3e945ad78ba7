package desk

import (
	"errors"
	"strings"

	"lintel/engine"
	"lintel/quiz"
)

// account is an instructor as kept.
type account struct {
	Instructor quiz.Instructor `json:"instructor"`
	Phrase     string          `json:"phrase"` // argon2id
}

func (d *Desk) accounts() table[account] { return table[account]{d.store, quiz.InstructorDoc} }

// folded is a call sign as accounts are told apart: "Chief 1" is "chief 1".
func folded(callSign string) string {
	return strings.Join(strings.Fields(strings.ToLower(callSign)), " ")
}

// accountOf finds an account by its call sign.
func (d *Desk) accountOf(callSign string) (found held[account], err error) {
	err = d.accounts().each(func(row held[account]) error {
		if folded(row.value.Instructor.CallSign) == folded(callSign) {
			found = row
			return errDone
		}
		return nil
	})
	switch {
	case errors.Is(err, errDone):
		return found, nil
	case err != nil:
		return found, err
	}
	return found, quiz.ErrNoDoc
}

// Instructors lists them.
func (d *Desk) Instructors() ([]quiz.Instructor, error) {
	all := []quiz.Instructor{}
	err := d.accounts().each(func(row held[account]) error {
		all = append(all, row.value.Instructor)
		return nil
	})
	return all, err
}

// SetUpCode is the one-time code of this start by which the first chief is made,
// or empty when there is one.
func (d *Desk) SetUpCode() (string, error) {
	all, err := d.Instructors()
	if err != nil || len(all) > 0 {
		return "", err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.setUp == "" {
		d.setUp = NewCode(longCode)
	}
	return Spaced(d.setUp), nil
}

// SetUp makes the first chief and signs them in.
func (d *Desk) SetUp(code, callSign, phrase string) (SignedIn, error) {
	all, err := d.Instructors()
	if err != nil {
		return SignedIn{}, err
	}
	if len(all) > 0 {
		return SignedIn{}, ErrHasChief
	}
	if err := checkAccount(callSign, phrase); err != nil {
		return SignedIn{}, err
	}
	d.mu.Lock()
	right := sameCode(d.setUp, code)
	if right {
		d.setUp = ""
	}
	d.mu.Unlock()
	if !right {
		return SignedIn{}, ErrWrongCode
	}
	made, err := d.newAccount(callSign, phrase, quiz.RoleChief, "set_up")
	if err != nil {
		// The code is good until somebody has come in by it.
		d.mu.Lock()
		d.setUp = Tidy(code)
		d.mu.Unlock()
	}
	return made, err
}

func checkAccount(callSign, phrase string) error {
	if !quiz.IsCallSign(callSign) {
		return engine.Bad("call_sign", "is empty, too long or holds control characters", "choose 1 to 32 letters, digits and spaces")
	}
	return checkPhrase("pass_phrase", phrase)
}

// newAccount makes an instructor, with what else is to change in the same commit,
// and signs them in.
func (d *Desk) newAccount(callSign, phrase string, role quiz.InstructorRole, did string, more ...quiz.Doc) (SignedIn, error) {
	if _, err := d.accountOf(callSign); err == nil {
		return SignedIn{}, ErrTaken
	}
	leave, err := d.lanes.enter(true)
	if err != nil {
		return SignedIn{}, err
	}
	defer leave()
	callSign = strings.TrimSpace(callSign)
	// The id follows from the call sign, so that of two who take it at once the
	// store refuses one.
	made := held[account]{id: digest("instructor " + folded(callSign))[:32]}
	made.value = account{Instructor: quiz.Instructor{ID: made.id, CallSign: callSign, Role: role, CreatedMS: d.now().UnixMilli()}, Phrase: d.cost.hash(phrase)}
	doc, err := d.accounts().doc(made)
	if err != nil {
		return SignedIn{}, err
	}
	return d.signIn(made.value.Instructor, "", quiz.Deed{By: callSign, Did: did, What: string(role)}, append(more, doc)...)
}

// Change gives an instructor another role, or shuts them out and ends their
// sign-ins. The invitations of one who is no chief any more end too.
func (d *Desk) Change(by quiz.Instructor, id string, role quiz.InstructorRole, shutOut bool) (quiz.Instructor, error) {
	if by.Role != quiz.RoleChief {
		return quiz.Instructor{}, ErrNotChief
	}
	if !engine.Known(role, quiz.InstructorRoles) {
		return quiz.Instructor{}, engine.Bad("role", "is not a role", "use "+engine.OneOf(quiz.InstructorRoles))
	}
	d.ranks.Lock()
	defer d.ranks.Unlock()
	if err := d.stillChief(by.ID); err != nil {
		return quiz.Instructor{}, err
	}
	row, err := d.accounts().get(id)
	if err != nil {
		return quiz.Instructor{}, err
	}
	if was := &row.value.Instructor; was.Role == quiz.RoleChief && !was.ShutOut && (role != quiz.RoleChief || shutOut) {
		if err := d.anotherChief(id); err != nil {
			return quiz.Instructor{}, err
		}
	}
	row.value.Instructor.Role, row.value.Instructor.ShutOut = role, shutOut
	ended, err := d.spent(func(_ string, k *key) bool {
		return shutOut && k.Of == id || k.By == id && (shutOut || role != quiz.RoleChief)
	})
	if err != nil {
		return quiz.Instructor{}, err
	}
	what := row.value.Instructor.CallSign + ": " + string(role)
	if shutOut {
		what += ", shut out"
	}
	return row.value.Instructor, d.accounts().save(quiz.Deed{By: by.CallSign, Did: "instructor", What: what}, row, ended...)
}

// stillChief asks anew whether somebody is a chief: they may have been demoted
// since their request came in.
func (d *Desk) stillChief(id string) error {
	row, err := d.accounts().get(id)
	if err != nil {
		return err
	}
	if i := &row.value.Instructor; i.Role != quiz.RoleChief || i.ShutOut {
		return ErrNotChief
	}
	return nil
}

// MayLead reports whether an instructor is here and not shut out.
func (d *Desk) MayLead(id string) bool {
	row, err := d.accounts().get(id)
	return err == nil && !row.value.Instructor.ShutOut
}

// anotherChief returns ErrLastChief when there is no chief but this one.
func (d *Desk) anotherChief(id string) error {
	all, err := d.Instructors()
	if err != nil {
		return err
	}
	for _, i := range all {
		if i.ID != id && i.Role == quiz.RoleChief && !i.ShutOut {
			return nil
		}
	}
	return ErrLastChief
}

// Deeds is who did what, newest first. For a chief only.
func (d *Desk) Deeds(by quiz.Instructor, before uint64, limit int) ([]quiz.Deed, error) {
	if by.Role != quiz.RoleChief {
		return nil, ErrNotChief
	}
	return d.store.Deeds(before, limit)
}
