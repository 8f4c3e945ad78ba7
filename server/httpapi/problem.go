package httpapi

import (
	"errors"
	"net/http"
	"strings"

	"github.com/gofiber/fiber/v2"

	"lintel/engine"
	"lintel/quiz"
	"lintel/server/class"
	"lintel/server/desk"
	"lintel/server/handover"
)

// problem is the one shape of an error.
type problem struct {
	Where string `json:"where"`
	What  string `json:"what"`
	Do    string `json:"do"`
}

type failure struct {
	Error problem `json:"error"`
	Acked *uint64 `json:"acked,omitempty"`
}

// errors of this package.
var (
	errNotSignedIn  = errors.New("not signed in: send the header Authorization: Device <device>:<secret>")
	errForeign      = errors.New("the request comes from another site: use the app from this server's own address")
	errNotJSON      = errors.New("the body is not plain JSON: send Content-Type application/json without a Content-Encoding")
	errTooMany      = errors.New("too many requests from this device: wait a moment and send again")
	errManyNewcomer = errors.New("too many devices are registering at once: wait a moment and send again")
	errPlain        = errors.New("this connection is not private, and no pass phrase may cross it: sign in on the server's own machine, or by https")
)

// statuses maps what went wrong to a status. The first match counts.
var statuses = []struct {
	err    error
	status int
}{
	{errNotSignedIn, http.StatusUnauthorized},
	{quiz.ErrUnknownDevice, http.StatusUnauthorized},
	{quiz.ErrWrongSecret, http.StatusUnauthorized},
	{desk.ErrNobody, http.StatusUnauthorized},
	{desk.ErrWrong, http.StatusUnauthorized},
	{class.ErrNotLead, http.StatusUnauthorized},
	{errForeign, http.StatusForbidden},
	{errPlain, http.StatusForbidden},
	{desk.ErrNotChief, http.StatusForbidden},
	{desk.ErrWrongCode, http.StatusForbidden},
	{class.ErrNotIn, http.StatusForbidden},
	{class.ErrNoEntry, http.StatusNotFound},
	{class.ErrNoClass, http.StatusNotFound},
	{class.ErrNoPerson, http.StatusNotFound},
	{quiz.ErrNoDoc, http.StatusNotFound},
	{quiz.ErrStale, http.StatusConflict},
	{desk.ErrTaken, http.StatusConflict},
	{desk.ErrLastChief, http.StatusConflict},
	{desk.ErrHasChief, http.StatusConflict},
	{desk.ErrSlowDown, http.StatusTooManyRequests},
	{desk.ErrHashing, http.StatusServiceUnavailable},
	{quiz.ErrManyDevices, http.StatusForbidden},
	{quiz.ErrGap, http.StatusConflict},
	{quiz.ErrForked, http.StatusConflict},
	{errNotJSON, http.StatusUnsupportedMediaType},
	{errTooMany, http.StatusTooManyRequests},
	{errManyNewcomer, http.StatusTooManyRequests},
	{quiz.ErrFull, http.StatusInsufficientStorage},
	{quiz.ErrBusy, http.StatusServiceUnavailable},
	{quiz.ErrClosed, http.StatusServiceUnavailable},
	{quiz.ErrBroken, http.StatusServiceUnavailable},
}

// sentences are for what fiber itself refuses.
var sentences = map[int]problem{
	http.StatusBadRequest:                  {"request", "cannot be read", "send a whole HTTP request"},
	http.StatusNotFound:                    {"path", "does not exist here", "see the paths in server/httpapi/README.md"},
	http.StatusMethodNotAllowed:            {"method", "is not allowed on this path", "see the paths in server/httpapi/README.md"},
	http.StatusRequestTimeout:              {"request", "took too long", "send it again"},
	http.StatusRequestEntityTooLarge:       {"body", "is larger than this server takes", "send fewer events at a time; nothing was stored"},
	http.StatusUpgradeRequired:             {"request", "does not ask for a socket", "connect with a websocket client"},
	http.StatusRequestHeaderFieldsTooLarge: {"headers", "are larger than this server takes", "send shorter headers"},
}

// failEarly answers requests that came to no handler: too large, too slow or
// torn. All others are answered by logged.
func (a *api) failEarly(c *fiber.Ctx, err error) error {
	a.Log.Warn("request refused unread", "why", err, "from", c.Context().RemoteAddr().String())
	return a.fail(c, err)
}

// fail turns any error into a status and one sentence.
func (a *api) fail(c *fiber.Ctx, err error) error {
	status, body := a.explain(err)
	if status == http.StatusTooManyRequests || status == http.StatusServiceUnavailable {
		c.Set(fiber.HeaderRetryAfter, "2")
	}
	if status == http.StatusUnauthorized {
		c.Set(fiber.HeaderWWWAuthenticate, "Device")
	}
	secure(c)
	c.Set(fiber.HeaderCacheControl, "no-store")
	return c.Status(status).JSON(body)
}

func (a *api) explain(err error) (int, failure) {
	var gap *gapError
	if errors.As(err, &gap) {
		return http.StatusConflict, failure{Error: split(quiz.ErrGap), Acked: &gap.acked}
	}
	var mistake *engine.Problem
	if errors.As(err, &mistake) {
		status := http.StatusBadRequest
		if refused := (*class.Refused)(nil); errors.As(err, &refused) {
			status = http.StatusConflict
		}
		return status, failure{Error: problem{mistake.Where, mistake.What, mistake.Do}}
	}
	if errors.Is(err, quiz.ErrUnknownDevice) {
		// Said in the same words as a wrong secret, so that nobody learns which
		// devices exist.
		err = quiz.ErrWrongSecret
	}
	for _, known := range statuses {
		if errors.Is(err, known.err) {
			return known.status, failure{Error: split(known.err)}
		}
	}
	var refusal *handover.Refusal
	if errors.As(err, &refusal) {
		return refusal.Status, failure{Error: problem{"socket", "was refused", "connect with a websocket client from this server's own address"}}
	}
	var own *fiber.Error
	if errors.As(err, &own) {
		if sentence, ok := sentences[own.Code]; ok {
			return own.Code, failure{Error: sentence}
		}
	}
	a.Log.Error("request failed", "err", err)
	return http.StatusInternalServerError, failure{Error: problem{"server", "failed at this request", "send it again; if it fails again, ask the server's keeper to look at the log"}}
}

// split turns "what: do" into its two halves.
func split(err error) problem {
	what, do, _ := strings.Cut(err.Error(), ": ")
	return problem{What: what, Do: do}
}

// gapError is ErrGap with the number to go on from.
type gapError struct{ acked uint64 }

func (e *gapError) Error() string { return quiz.ErrGap.Error() }
