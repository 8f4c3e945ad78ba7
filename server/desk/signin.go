package desk

import (
	"errors"

	"lintel/engine"
	"lintel/quiz"
)

// SignedIn is an instructor with the secret of their sign-in, and the secret by
// which the browser is known next time.
type SignedIn struct {
	Instructor quiz.Instructor
	Session    string
	Browser    string
	UntilMS    int64
}

// From is what the server knows of where a try comes from.
type From struct {
	Own     bool   // the server's own machine
	Browser string // the secret of a browser that was signed in before, if any
}

// SignIn checks a pass phrase.
func (d *Desk) SignIn(callSign, phrase string, from From) (SignedIn, error) {
	row, err := d.accountOf(callSign)
	if err != nil && !errors.Is(err, quiz.ErrNoDoc) {
		return SignedIn{}, err
	}
	exists := err == nil && !row.value.Instructor.ShutOut
	name, known := d.triesAs(row.id, callSign, from)
	if !d.tries.may(name, known) {
		return SignedIn{}, ErrSlowDown
	}
	leave, err := d.lanes.enter(known)
	if err != nil {
		return SignedIn{}, err
	}
	kept := d.cost.nobodys()
	if exists {
		kept = row.value.Phrase
	}
	right := matches(kept, phrase)
	leave()
	if !right || !exists {
		return SignedIn{}, ErrWrong
	}
	d.tries.Forget(name)
	return d.signIn(row.value.Instructor, from.Browser, quiz.Deed{By: row.value.Instructor.CallSign, Did: "sign_in", What: "pass phrase"})
}

// triesAs is whose allowance a try uses up.
func (d *Desk) triesAs(account, callSign string, from From) (name string, known bool) {
	if account == "" {
		account = "nobody " + digest(folded(callSign)) // of one length, however long what was typed
	}
	if from.Browser != "" {
		if row, err := d.find(browserKey, from.Browser); err == nil && row.value.Of == account {
			return "browser " + row.id, true
		}
	}
	if from.Own {
		return "own " + account, true
	}
	return "stranger " + account, false
}

// signIn makes a session, and a browser's key unless it has one, in one commit
// with whatever brought it about.
func (d *Desk) signIn(who quiz.Instructor, browser string, deed quiz.Deed, more ...quiz.Doc) (SignedIn, error) {
	out := SignedIn{Instructor: who, Session: Secret(32), Browser: browser}
	doc, until, err := d.cut(key{Kind: sessionKey, Of: who.ID}, out.Session)
	if err != nil {
		return SignedIn{}, err
	}
	out.UntilMS = until
	docs := append(more, doc)
	if row, err := d.find(browserKey, browser); err != nil || row.value.Of != who.ID {
		out.Browser = Secret(32)
		doc, _, err := d.cut(key{Kind: browserKey, Of: who.ID}, out.Browser)
		if err != nil {
			return SignedIn{}, err
		}
		docs = append(docs, doc)
	}
	return out, d.store.Save(deed, docs...)
}

// WhoIs returns the instructor whose session this is, or ErrNobody.
func (d *Desk) WhoIs(session string) (quiz.Instructor, error) {
	if session == "" {
		return quiz.Instructor{}, ErrNobody
	}
	row, err := d.find(sessionKey, session)
	if errors.Is(err, quiz.ErrNoDoc) {
		return quiz.Instructor{}, ErrNobody
	}
	if err != nil {
		return quiz.Instructor{}, err
	}
	who, err := d.accounts().get(row.value.Of)
	if err != nil || who.value.Instructor.ShutOut {
		return quiz.Instructor{}, errors.Join(ErrNobody, err)
	}
	return who.value.Instructor, nil
}

// SignOut ends a session.
func (d *Desk) SignOut(session string) error {
	row, err := d.find(sessionKey, session)
	if errors.Is(err, quiz.ErrNoDoc) {
		return nil
	}
	if err != nil {
		return err
	}
	return d.store.Save(quiz.Deed{}, d.keys().gone(row))
}

// Invite makes a one-time code for a new instructor.
func (d *Desk) Invite(by quiz.Instructor, role quiz.InstructorRole) (code string, untilMS int64, err error) {
	if by.Role != quiz.RoleChief {
		return "", 0, ErrNotChief
	}
	if !engine.Known(role, quiz.InstructorRoles) {
		return "", 0, engine.Bad("role", "is not a role", "use "+engine.OneOf(quiz.InstructorRoles))
	}
	return d.oneTime(key{Kind: inviteKey, By: by.ID, Role: role}, quiz.Deed{By: by.CallSign, Did: "invite", What: string(role)})
}

// ConsoleReset makes a one-time code by which an instructor, named by call sign,
// chooses a new pass phrase. Called from the server's console only.
func (d *Desk) ConsoleReset(callSign string) (code string, untilMS int64, err error) {
	row, err := d.accountOf(callSign)
	if errors.Is(err, quiz.ErrNoDoc) {
		return "", 0, engine.Bad(callSign, "is no instructor here", "see the call signs with the command instructor list")
	}
	if err != nil {
		return "", 0, err
	}
	return d.oneTime(key{Kind: resetKey, Of: row.id}, quiz.Deed{By: "console", Did: "reset", What: row.value.Instructor.CallSign})
}

func (d *Desk) oneTime(k key, deed quiz.Deed) (code string, untilMS int64, err error) {
	code = NewCode(longCode)
	doc, untilMS, err := d.cut(k, code)
	if err != nil {
		return "", 0, err
	}
	return Spaced(code), untilMS, d.store.Save(deed, doc)
}

// Redeem uses up an invitation, making a new instructor, or a code from the
// console, giving the one it is for a new pass phrase; all their other sign-ins
// and their invitations then end.
func (d *Desk) Redeem(code, callSign, phrase string) (SignedIn, error) {
	code = Tidy(code)
	if row, err := d.find(inviteKey, code); err == nil {
		if err := checkAccount(callSign, phrase); err != nil {
			return SignedIn{}, err
		}
		return d.newAccount(callSign, phrase, row.value.Role, "accept", d.keys().gone(row))
	}
	row, err := d.find(resetKey, code)
	if errors.Is(err, quiz.ErrNoDoc) {
		return SignedIn{}, ErrWrongCode
	}
	if err != nil {
		return SignedIn{}, err
	}
	who, err := d.accounts().get(row.value.Of)
	if err != nil {
		return SignedIn{}, err
	}
	who.value.Instructor.ShutOut = false
	return d.newPhrase(who, "pass_phrase", phrase, "new_phrase", "", func(_ string, k *key) bool { return k.Of == who.id || k.By == who.id })
}

// ChangePhrase gives an instructor a new pass phrase in place of the old, and
// ends their other sign-ins.
func (d *Desk) ChangePhrase(who quiz.Instructor, browser, old, phrase string) (SignedIn, error) {
	row, err := d.accounts().get(who.ID)
	if err != nil {
		return SignedIn{}, err
	}
	if !d.tries.may("own phrase "+who.ID, true) {
		return SignedIn{}, ErrSlowDown
	}
	leave, err := d.lanes.enter(true)
	if err != nil {
		return SignedIn{}, err
	}
	right := matches(row.value.Phrase, old)
	leave()
	if !right {
		return SignedIn{}, ErrWrong
	}
	return d.newPhrase(row, "new", phrase, "new_phrase", browser, func(_ string, k *key) bool { return k.Of == who.ID && k.Kind != browserKey })
}

func (d *Desk) newPhrase(row held[account], where, phrase, did, browser string, ends func(string, *key) bool) (SignedIn, error) {
	if err := checkPhrase(where, phrase); err != nil {
		return SignedIn{}, err
	}
	ended, err := d.spent(ends)
	if err != nil {
		return SignedIn{}, err
	}
	leave, err := d.lanes.enter(true)
	if err != nil {
		return SignedIn{}, err
	}
	row.value.Phrase = d.cost.hash(phrase)
	leave()
	doc, err := d.accounts().doc(row)
	if err != nil {
		return SignedIn{}, err
	}
	return d.signIn(row.value.Instructor, browser, quiz.Deed{By: row.value.Instructor.CallSign, Did: did, What: "other sign-ins ended"}, append(ended, doc)...)
}
