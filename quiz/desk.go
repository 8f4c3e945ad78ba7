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
