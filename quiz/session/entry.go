package session

import "lintel/quiz"

// Kind says what an entry of a class's log records.
type Kind string

// The kinds of entry.
const (
	Opened          Kind = "opened"           // Class and Scenes
	Joined          Kind = "joined"           // Member, who becomes the next person
	Moved           Kind = "moved"            // Person and Member: on another phone from here on, with all they committed
	Renamed         Kind = "renamed"          // Person and CallSign
	Removed         Kind = "removed"          // Person and On; what they committed stays, off lets them back in
	Started         Kind = "started"          // Scene, led: from gather to watching it
	Stepped         Kind = "stepped"          // To and Scene
	LookExtended    Kind = "look_extended"    // AddS
	LookUntimed     Kind = "look_untimed"     // the look has no end any more
	Undone          Kind = "undone"           // the last step is taken back
	Committed       Kind = "committed"        // Person, Scene and Commit
	Disagreed       Kind = "disagreed"        // Scene, Ask, On and Note: the instructor doubts a key
	SceneAdded      Kind = "scene_added"      // Scenes holds the one
	ScenesReordered Kind = "scenes_reordered" // Order
	Locked          Kind = "locked"           // On: nobody new may join
	Ended           Kind = "ended"
)

// Kinds lists every kind.
var Kinds = []Kind{Opened, Joined, Moved, Renamed, Removed, Started, Stepped, LookExtended, LookUntimed, Undone, Committed,
	Disagreed, SceneAdded, ScenesReordered, Locked, Ended}

// Step is where a class stands.
type Step string

// The steps. A led class goes through watch, commit, compare and cutaway for
// each scene; a self-paced one works in commit and may meet in compare and
// cutaway.
const (
	Gather  Step = "gather"  // people come in
	Watch   Step = "watch"   // the scene is looked at
	Commit  Step = "commit"  // readings are committed
	Compare Step = "compare" // the spread is shown, the truth not yet
	Cutaway Step = "cutaway" // the wall is drawn away and the truth shown
	Over    Step = "ended"   // the class has ended
)

// Pace says who turns the page.
type Pace string

// The paces.
const (
	Led  Pace = "led"  // the instructor
	Self Pace = "self" // everyone their own
)

// Limits of a class, all chosen by us.
const (
	Version     = 1
	MaxScenes   = 40
	MaxNote     = 400  // characters
	MaxLookS    = 1800 // s
	UndoMS      = 5000 // how long a step may be taken back
	MaxPeople   = 5000
	PlacesEach  = 2 // people who may share a phone
	FirstPlace  = "a"
	SecondPlace = "b"
)

// Entry is one line of a class's log. Seq counts from 1 without a gap, AtMS is
// the server's clock. By is who acted: an instructor's call sign, or empty for a
// trainee's own. Of the other fields only those that Kind names are set.
type Entry struct {
	V        int      `json:"v"`
	Seq      uint64   `json:"seq"`
	AtMS     int64    `json:"at_ms"`
	Kind     Kind     `json:"kind"`
	By       string   `json:"by,omitempty"`
	Class    *Class   `json:"class,omitempty"`
	Person   int      `json:"person,omitempty"` // from 1, in order of joining
	Member   *Member  `json:"member,omitempty"`
	CallSign string   `json:"call_sign,omitempty"`
	Scene    string   `json:"scene,omitempty"` // a scene's id
	Scenes   []Scene  `json:"scenes,omitempty"`
	Order    []string `json:"order,omitempty"`
	To       Step     `json:"to,omitempty"`
	AddS     int      `json:"add_s,omitempty"`
	Answer   *Mark    `json:"answer,omitempty"`
	Ask      string   `json:"ask,omitempty"`
	On       bool     `json:"on,omitempty"`
	Note     string   `json:"note,omitempty"`
}

// Class is what a class is from its first moment to its last. It runs on one
// version of engine and content.
type Class struct {
	ID        string `json:"id"`
	Title     string `json:"title"`
	Pace      Pace   `json:"pace"`
	Rehearsal bool   `json:"rehearsal"` // never in anyone's records
	Roster    string `json:"roster,omitempty"`
	Engine    string `json:"engine"`
	Content   string `json:"content"`
}

// Planned is a scene as an instructor plans it: of a family, or with Own one that
// was sketched. LookS is the time to look, 0 for as long as one likes; Note is for
// the instructor alone.
type Planned struct {
	Family string    `json:"family"`
	Seed   uint64    `json:"seed"`
	Own    *quiz.Own `json:"own,omitempty"`
	LookS  int       `json:"look_s"`
	Note   string    `json:"note"`
}

// Scene is what is to be made.
func (p *Planned) Scene() quiz.Scene { return quiz.Scene{Family: p.Family, Seed: p.Seed, Own: p.Own} }

// Scene is a planned scene made ready: the item that the phones make too, and
// every right reply to each of its asks, as the server worked them out.
type Scene struct {
	ID string `json:"id"`
	Planned
	Item  quiz.Item      `json:"item"`
	Truth [][]quiz.Reply `json:"truth"`
}

// Member is who joined: a device with one of its places, or for a sheet filled
// in on paper no device. Seat is the place in a roster, where there is one.
type Member struct {
	CallSign string `json:"call_sign"`
	Device   string `json:"device,omitempty"`
	Place    string `json:"place,omitempty"`
	Seat     string `json:"seat,omitempty"`
}

// Mark is an answer as it counts in the class: judged by the server against its
// own truth, whatever the phone showed. Event is the id of the device's event,
// Sheet says that the instructor typed it in from paper.
type Mark struct {
	Event      string     `json:"event,omitempty"`
	Sheet      bool       `json:"sheet,omitempty"`
	Parts      []PartMark `json:"parts"`
	Score      float64    `json:"score"`
	Confidence *float64   `json:"confidence,omitempty"`
	TookS      float64    `json:"took_s"`
}

// PartMark is the mark of one ask: what was given, the error from 0 to 1, and
// the signed ordinal error where there is one (positive reads too heavy).
type PartMark struct {
	Ask   string     `json:"ask"`
	Given quiz.Reply `json:"given"`
	Error float64    `json:"error"`
	Steps *int       `json:"steps,omitempty"`
	Right bool       `json:"right"`
}
