package class

import (
	"strconv"
	"time"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
)

// Act is something that whoever leads does to a class; of the parts only those
// are given that the kind calls for. Besides the kinds of a log's entries there
// is Sheet, a prediction sheet typed in from paper.
type Act struct {
	Kind       session.Kind     `json:"kind"`
	Scene      string           `json:"scene,omitempty"`
	To         session.Step     `json:"to,omitempty"`
	AddS       int              `json:"add_s,omitempty"`
	Person     int              `json:"person,omitempty"`
	CallSign   string           `json:"call_sign,omitempty"`
	Seat       string           `json:"seat,omitempty"`
	Ask        string           `json:"ask,omitempty"`
	On         bool             `json:"on,omitempty"`
	Note       string           `json:"note,omitempty"`
	Planned    *session.Planned `json:"planned,omitempty"`
	Order      []string         `json:"order,omitempty"`
	Replies    []quiz.Reply     `json:"replies,omitempty"`
	Confidence *float64         `json:"confidence,omitempty"`
}

// Sheet is the kind of act that no log's entry has.
const Sheet session.Kind = "sheet"

// told are the kinds that the record of who did what keeps too; the steps of a
// class stand in its log.
var told = []session.Kind{session.Renamed, session.Removed, session.Disagreed, session.Ended, Sheet}

// Do takes an act, one at a time in each class, and returns its place in the log
// once it is durable. What the class does not allow comes back as *Refused.
func (c *Classes) Do(by, id string, act Act) (seq uint64, err error) {
	r, err := c.room(id)
	if err != nil {
		return 0, err
	}
	r.acts.Lock()
	defer r.acts.Unlock()
	deed := quiz.Deed{}
	if engine.Known(act.Kind, told) {
		kept := r.kept()
		deed = quiz.Deed{By: by, Did: string(act.Kind), What: kept.Class.Title + detail(&act)}
	}
	switch act.Kind {
	case Sheet:
		return r.sheet(by, deed, &act)
	case session.Opened, session.Joined, session.Moved, session.Committed:
		return 0, engine.Bad("act.kind", "is not an act", "see server/httpapi/README.md")
	}
	e, err := r.entryFor(by, &act)
	if err != nil {
		return 0, err
	}
	if err := notThereAlready(r.now(), e); err != nil {
		return 0, err
	}
	if err := r.allowed(e); err != nil {
		return 0, err
	}
	release, err := r.hold(namedBy(r.now(), e)...)
	if err != nil {
		return 0, err
	}
	defer release()
	if seq, err = r.enter(deed, e); err != nil {
		return 0, err
	}
	return seq, r.after(act.Kind)
}

func detail(act *Act) string {
	switch {
	case act.Person != 0:
		return ", person " + strconv.Itoa(act.Person)
	case act.Ask != "":
		return ", " + act.Scene + " " + act.Ask
	}
	return ""
}

// notThereAlready refuses a step to where the class stands: pressed on two boards
// at once, the second would begin the look anew and leave nothing to take back.
func notThereAlready(s session.State, e session.Entry) error {
	if e.Kind != session.Stepped || e.To != s.Step || e.Scene != s.Scene {
		return nil
	}
	return &Refused{Why: engine.Bad("class", "is at "+string(e.To)+" already", "go on from there")}
}

func (r *room) entryFor(by string, act *Act) (session.Entry, error) {
	e := session.Entry{Kind: act.Kind, By: by, Person: act.Person, Scene: act.Scene, Order: act.Order, To: act.To, AddS: act.AddS, Ask: act.Ask, On: act.On, Note: act.Note}
	if act.Kind == session.Renamed {
		if !quiz.IsCallSign(act.CallSign) {
			return e, engine.Bad("act.call_sign", "is empty, too long or holds control characters", "choose 1 to 32 letters, digits and spaces")
		}
		e.CallSign = tidy(act.CallSign)
	}
	if !quiz.IsNote(act.Note, session.MaxNote) {
		return e, engine.Bad("act.note", "is too long or holds control characters", "keep it within "+strconv.Itoa(session.MaxNote)+" characters")
	}
	if act.Kind != session.SceneAdded {
		return e, nil
	}
	if act.Planned == nil {
		return e, engine.Bad("act.planned", "is missing", "give the scene to add")
	}
	if err := session.CheckPlanned("act.planned", act.Planned); err != nil {
		return e, err
	}
	s := r.now()
	scene, err := r.classes.make("s"+strconv.Itoa(len(s.Scenes)+1), *act.Planned)
	e.Scenes = []session.Scene{scene}
	return e, err
}

// after does what an act brings with it outside the log: an ended class lets
// nobody in, and one whose end was undone does again.
func (r *room) after(kind session.Kind) error {
	s, kept := r.now(), r.kept()
	if (s.EndedMS != 0) == (kept.EndedMS != 0) {
		return nil
	}
	if err := r.change(quiz.Deed{}, func(kept *row) { kept.EndedMS = s.EndedMS }); err != nil {
		return err
	}
	kept = r.kept()
	if kept.EndedMS != 0 {
		r.classes.door.shut(r.id)
	} else {
		r.classes.door.put(r.id, &kept)
	}
	r.classes.changed(r.id, nil, true)
	return nil
}

// sheet enters a prediction sheet: for a person of the class, for a seat of its
// roster, or for a call sign that is new here.
func (r *room) sheet(by string, deed quiz.Deed, act *Act) (uint64, error) {
	person, err := r.sheetPerson(by, act)
	if err != nil {
		return 0, err
	}
	s := r.now()
	scene, _ := s.SceneOf(act.Scene)
	if scene == nil {
		return 0, engine.Bad("act.scene", "is not one of this class", "name a scene of the class")
	}
	mark, err := judge(scene, &quiz.Answer{V: 1, Replies: act.Replies, Confidence: act.Confidence})
	if err != nil {
		return 0, err
	}
	mark.Sheet = true
	e := session.Entry{Kind: session.Committed, By: by, Person: person, Scene: act.Scene, Answer: mark}
	if err := r.allowed(e); err != nil {
		return 0, err
	}
	return r.enter(deed, e)
}

func (r *room) sheetPerson(by string, act *Act) (int, error) {
	if act.Person != 0 {
		return act.Person, nil
	}
	s := r.now()
	member := &session.Member{CallSign: tidy(act.CallSign), Seat: act.Seat}
	if act.Seat != "" {
		if sits := s.Seated(act.Seat); sits != nil {
			return sits.Number, nil
		}
		name, err := r.classes.Desk.SeatName(s.Class.Roster, act.Seat)
		if err != nil {
			return 0, engine.Bad("act.seat", "is no seat of this class's roster", "name a seat, a person or a call sign")
		}
		member.CallSign = name
	}
	if p := bearer(&s, member.CallSign); p != nil && p.Device == "" && act.Seat == "" {
		return p.Number, nil
	}
	if !quiz.IsCallSign(member.CallSign) {
		return 0, engine.Bad("act.call_sign", "is empty, too long or holds control characters", "say whose sheet it is")
	}
	release, err := r.hold(signed{sign: member.CallSign, who: onPaper})
	if err != nil {
		return 0, err
	}
	defer release()
	e := session.Entry{Kind: session.Joined, By: by, Member: member}
	if err := r.allowed(e); err != nil {
		return 0, err
	}
	seq, err := r.enter(quiz.Deed{}, e)
	if err != nil {
		return 0, err
	}
	return r.joinedAt(seq, member)
}

// joinedAt is the number of a person without a device once they are settled.
func (r *room) joinedAt(seq uint64, member *session.Member) (int, error) {
	for s := r.now(); ; s = r.now() {
		if s.Seq < seq {
			time.Sleep(time.Millisecond)
			r.catchUp()
			continue
		}
		for i := len(s.People) - 1; i >= 0; i-- {
			if p := s.People[i]; p.Member == *member {
				return p.Number, nil
			}
		}
		return 0, &Refused{Why: engine.Bad("class", "took somebody else meanwhile", "try again")}
	}
}
