package session

// Viewer is who looks at a class over a live socket.
type Viewer string

// The viewers. A lead is a phone or tablet that was handed the class by a
// one-time code; it sees the board.
const (
	Phone     Viewer = "phone"
	Board     Viewer = "board"
	Lead      Viewer = "lead"
	Projector Viewer = "projector"
)

// Hello is the first frame a viewer sends. A phone gives its device and secret,
// a lead its key, a projector its token; a board is known by its cookie. Last is
// the highest seq of a view it holds, 0 for none.
type Hello struct {
	Role   Viewer `json:"role"`
	Device string `json:"device,omitempty"`
	Secret string `json:"secret,omitempty"`
	Key    string `json:"key,omitempty"`
	Last   uint64 `json:"last"`
}

// HelloPatienceMS is how long the server waits for a Hello, ms. A phone that was
// slower tries again (chosen by us).
const HelloPatienceMS = 5000

// FrameKind is what a frame from the server holds.
type FrameKind string

// The kinds of frame.
const (
	ViewFrame    FrameKind = "view"    // the whole view of this viewer; a higher seq takes the place of a lower
	CurrentFrame FrameKind = "current" // what the viewer holds at seq is still so
	PlacesFrame  FrameKind = "places"  // the people on this phone
	HereFrame    FrameKind = "here"    // to board and lead: the persons who are connected
	DoorFrame    FrameKind = "door"    // to board, lead and projector: how to join
)

// Frame is what the server sends. Of the parts only the one that Kind and the
// viewer call for is there. NowMS is the server's clock.
type Frame struct {
	Kind      FrameKind      `json:"kind"`
	Seq       uint64         `json:"seq"`
	NowMS     int64          `json:"now_ms"`
	Phone     *PhoneView     `json:"phone,omitempty"`
	Board     *BoardView     `json:"board,omitempty"`
	Projector *ProjectorView `json:"projector,omitempty"`
	Places    []PlaceView    `json:"places,omitzero"`
	Here      []int          `json:"here,omitzero"`
	Door      *Door          `json:"door,omitempty"`
}

// Door is how to join a class: Token stands in the QR code's address, Code is
// for typing.
type Door struct {
	Token string `json:"token"`
	Code  string `json:"code"`
}

// Set is scenes in an order, as an instructor keeps them.
type Set struct {
	ID     string    `json:"id"`
	Title  string    `json:"title"`
	Scenes []Planned `json:"scenes"`
}

// Listed is a class in the list of classes.
type Listed struct {
	Class
	OpenedMS  int64  `json:"opened_ms"`
	EndedMS   int64  `json:"ended_ms"`
	By        string `json:"by"`
	Step      Step   `json:"step"`
	Scenes    int    `json:"scenes"`
	People    int    `json:"people"`
	Connected int    `json:"connected"`
	Door      *Door  `json:"door,omitempty"`      // while it goes on
	Projector string `json:"projector,omitempty"` // the projector's token, while it goes on
}
