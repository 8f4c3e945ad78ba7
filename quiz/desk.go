package quiz

// InstructorRole is what an instructor may do.
type InstructorRole string

// The roles. A chief does all that an instructor does, invites and shuts out
// instructors, and reads who did what.
const (
	RoleInstructor InstructorRole = "instructor"
	RoleChief      InstructorRole = "chief"
)

// InstructorRoles lists every role.
var InstructorRoles = []InstructorRole{RoleInstructor, RoleChief}

// Instructor is one who may prepare and lead classes. The pass phrase is kept
// apart and leaves the server in no form.
type Instructor struct {
	ID        string         `json:"id"`
	CallSign  string         `json:"call_sign"`
	Role      InstructorRole `json:"role"`
	ShutOut   bool           `json:"shut_out"` // may not sign in any more
	CreatedMS int64          `json:"created_ms"`
}

// Roster is the people in an instructor's care, by call sign.
type Roster struct {
	ID    string `json:"id"`
	Title string `json:"title"`
	Seats []Seat `json:"seats"`
}

// Seat is one person's place in a roster. Numbered says that a personnel number
// is kept; the number itself leaves the server in the roster's own export only.
// ClaimedMS is when a device took the place, 0 when none has.
type Seat struct {
	ID        string `json:"id"`
	CallSign  string `json:"call_sign"`
	Numbered  bool   `json:"numbered"`
	ClaimedMS int64  `json:"claimed_ms"`
}

// Deed is a line of the record of who did what.
type Deed struct {
	Seq  uint64 `json:"seq"`
	AtMS int64  `json:"at_ms"`
	By   string `json:"by"`   // an instructor's call sign, "console", or "phone of ..."
	Did  string `json:"did"`  // one word for the act
	What string `json:"what"` // what it was done to
}

// Limits of what instructors keep, all chosen by us.
const (
	MaxSeats     = 500
	MaxPersonnel = 32 // characters
	MaxDocBytes  = 1 << 20
)

// DocKind is what a Doc is about.
type DocKind string

// The kinds of doc.
const (
	InstructorDoc DocKind = "instructors"
	KeyDoc        DocKind = "keys" // sign-ins, invitations and other secrets, by digest
	RosterDoc     DocKind = "rosters"
	SetDoc        DocKind = "sets"
	ClassDoc      DocKind = "classes"
)

// DocKinds lists every kind.
var DocKinds = []DocKind{InstructorDoc, KeyDoc, RosterDoc, SetDoc, ClassDoc}

// Doc is one thing that instructors keep. Rev counts its changes: a change names
// the Rev it was made from, 0 for a new doc, and is refused when another came
// between. An empty Body takes the doc away.
type Doc struct {
	Kind DocKind `json:"kind"`
	ID   string  `json:"id"`
	Rev  uint64  `json:"rev"`
	Body Raw     `json:"body"`

	Sheds bool `json:"-"` // of a change: somebody was taken out, and what it was before is to leave the file
}

// Line is one entry of a class's log. Class is 128 bits of lower-case hex, Seq
// counts from 1 in each class without a gap, Event is the event it came with
// where it came with one.
type Line struct {
	Class string `json:"class"`
	Seq   uint64 `json:"seq"`
	Event uint64 `json:"-"`
	Body  Raw    `json:"body"`
}

// Desk is the part of a Store that keeps what instructors make. What is said of
// Store holds for it too.
type Desk interface {
	// Doc returns one doc. Returns ErrNoDoc.
	Doc(kind DocKind, id string) (Doc, error)

	// Docs returns up to limit docs of a kind after an id, in order of id.
	Docs(kind DocKind, after string, limit int) ([]Doc, error)

	// Save stores docs, all or none, and the deed with them unless its Did is
	// empty. Returns ErrStale, ErrNoDoc for one to be taken away that is not
	// there, or a write error.
	Save(deed Deed, docs ...Doc) error

	// Deeds returns up to limit deeds before a sequence number (0: from the last
	// one), newest first.
	Deeds(before uint64, limit int) ([]Deed, error)

	// AddLines enters lines into a class's log, and the deed unless its Did is
	// empty; it returns the first line's place. Returns ErrNoDoc when there is no
	// such class, or a write error.
	AddLines(deed Deed, class string, bodies ...Raw) (first uint64, err error)

	// Lines returns up to limit lines of a class's log after a place, in order.
	Lines(class string, after uint64, limit int) ([]Line, error)
}
