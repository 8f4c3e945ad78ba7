package quiz

import "errors"

// The errors a Store returns. Anything else is a fault of the store itself: it
// is logged and never shown.
var (
	// ErrUnknownDevice: no device of that id has registered.
	ErrUnknownDevice = errors.New("device is not known here: register it first")
	// ErrWrongSecret: the device exists and the secret is not its own.
	ErrWrongSecret = errors.New("device and secret do not match: sign in with the secret this device made")
	// ErrGap: an event is missing before the first one given. Nothing was stored.
	ErrGap = errors.New("events are missing in the sequence: send again from the one after acked")
	// ErrForked: the sequence number or the id is already taken by another event
	// of this device. Nothing was stored.
	ErrForked = errors.New("this device has two histories under one id: register it anew and send the events again")
	// ErrFull: there is no room to write. Nothing was stored.
	ErrFull = errors.New("the server's disk is full: nothing was stored, keep the events and send them again later")
	// ErrBusy: too much is waiting to be written. Nothing was stored.
	ErrBusy = errors.New("the server is busy: nothing was stored, send the events again in a moment")
	// ErrBroken: an earlier write failed in a way that leaves the disk in doubt;
	// the store takes no more until the server is restarted.
	ErrBroken = errors.New("the store stopped after a failed write: nothing was stored, restart the server")
	// ErrClosed: the store is shut or shutting.
	ErrClosed = errors.New("the server is stopping: nothing was stored, send the events again in a moment")
	// ErrNoDoc: nothing of that kind has that id.
	ErrNoDoc = errors.New("it does not exist here: look at the list again")
	// ErrStale: it has been changed since it was read. Nothing was stored.
	ErrStale = errors.New("somebody else changed it meanwhile: look at it again, then change it")
	// ErrManyDevices: no further device is accepted.
	ErrManyDevices = errors.New("this server holds as many devices as it accepts: ask its keeper to raise the limit")
)

// Device is a phone or laptop that has registered. Its secret is never kept,
// only a digest inside the store.
type Device struct {
	ID        string `json:"device"`
	CallSign  string `json:"call_sign"`
	CreatedMS int64  `json:"created_ms"` // the server's clock
}

// CheckState says who vouches for an answer's score.
type CheckState string

// The states of a check.
const (
	CheckWaiting    CheckState = "waiting"    // not looked at yet
	CheckAgreed     CheckState = "agreed"     // the server recomputed it and agrees
	CheckDiffers    CheckState = "differs"    // the server recomputed it; the server's verdict counts
	CheckOnDevice   CheckState = "on_device"  // scored on the device by another version; kept, never rescored
	CheckUnreadable CheckState = "unreadable" // the body is not an answer this server can read
)

// Check is the server's own look at an answer, stored beside the event and
// never instead of it. Engine and Content name the version that scored it.
type Check struct {
	V       int        `json:"v"`
	State   CheckState `json:"state"`
	Engine  string     `json:"engine,omitempty"`
	Content string     `json:"content,omitempty"`
	Why     string     `json:"why,omitempty"` // one sentence, where there is something to say
	Verdict *Verdict   `json:"verdict,omitempty"`
}

// Record is a stored event with the time it came in and, for an answer, its check.
type Record struct {
	Event
	ReceivedMS int64  `json:"received_ms"`
	Check      *Check `json:"check,omitempty"`
}

// PageBytes is how much of events' bodies is read at once, so that a small request
// cannot have the server hold a large history for it many times over. Chosen by us.
const PageBytes = 1 << 20

// Store keeps devices and their events. Every method may be called from any
// goroutine. A method that writes returns only when what it wrote would survive
// the process being killed, or was not written at all. Implementations must
// pass the tests in server/store/storetest.
type Store interface {
	// Register adds a device, or changes the call sign of one whose secret
	// matches. Called by anyone; the arguments have passed ValidateDevice.
	// Returns ErrWrongSecret, ErrManyDevices or a write error.
	Register(device, secret, callSign string) (Device, error)

	// Welcome is Register for somebody who holds the token of a class: a part of
	// the room is kept for them, which strangers cannot fill.
	Welcome(device, secret, callSign string) (Device, error)

	// Authenticate returns the device whose secret this is. Called before
	// everything that acts for a device. Returns ErrUnknownDevice or
	// ErrWrongSecret, in equal time.
	Authenticate(device, secret string) (Device, error)

	// Append adds events to one device's history, all or none, and returns the
	// highest sequence number up to which the history is whole and durable.
	// Events already held under the same sequence number and id are skipped. The
	// events have passed ValidateBatch for an authenticated device. Returns
	// ErrGap (with the acknowledged number), ErrForked, ErrUnknownDevice or a
	// write error.
	Append(device string, events []Event) (acked uint64, err error)

	// Commit is Append that enters lines into the logs of classes in the same
	// commit: each line names in Event the sequence number of the event it goes
	// with, and is entered when that event is new. It returns the lines that were
	// entered, with their place in the log. A line whose class is not here is left
	// out. Called for answers given in a class.
	Commit(device string, events []Event, lines []Line) (acked uint64, entered []Line, err error)

	// Acked returns the number that Append would, without writing.
	// Returns ErrUnknownDevice.
	Acked(device string) (uint64, error)

	// Records returns up to limit of a device's events after a sequence number,
	// in order; fewer where they are large: none follows once their bodies have
	// filled PageBytes. None are returned where none are left. Called for the
	// device itself and for export. Returns ErrUnknownDevice.
	Records(device string, after uint64, limit int) ([]Record, error)

	// Devices returns up to limit devices after an id, in order of id. Called
	// for export and checks only.
	Devices(after string, limit int) ([]Device, error)

	// Waiting returns up to limit answers that no one has checked: of each device
	// its oldest, in order of id from the first device after the one named and
	// round to that one, so that no device's many keep another's few waiting. An
	// empty name begins at the first. Called by the checker only.
	Waiting(after string, limit int) ([]Event, error)

	// SetCheck stores the check of an answer and takes it off the waiting list.
	// Called by the checker only. A second check of the same answer is ignored.
	// Returns a write error.
	SetCheck(device string, seq uint64, check Check) error

	// Rekey gives a device another secret, so that the phone that holds the old
	// one is signed out. Returns ErrUnknownDevice or a write error.
	Rekey(device, secret string) (Device, error)

	// Erase takes away a device with all its events and checks, puts lines in the
	// place of those that name it in the logs of classes, and saves docs, all or
	// none. Returns ErrUnknownDevice, ErrStale or a write error.
	Erase(device string, lines []Line, deed Deed, docs ...Doc) error

	Desk

	// Ready returns nil when the store takes writes, else ErrBroken or ErrClosed.
	Ready() error

	// Close finishes what was promised and lets the file go.
	Close() error
}
