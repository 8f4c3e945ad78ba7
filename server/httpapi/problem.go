package httpapi

import (
	"errors"
	"log/slog"
	"net/http"
	"strings"

	"github.com/gofiber/fiber/v2"

	"lintel/engine"
	"lintel/quiz"
	"lintel/server/class"
	"lintel/server/desk"
	"lintel/server/handover"
)

// problem is the one shape of an error. By its code, where it has one, a page says
// it in its own language.
type problem struct {
	Code  string `json:"code,omitempty"`
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

// statuses maps what went wrong to a status and a code, which has its sentences in
// pwa/src/words. The first match counts.
var statuses = []struct {
	err    error
	status int
	code   string
}{
	{errNotSignedIn, http.StatusUnauthorized, "not_signed_in"},
	{quiz.ErrUnknownDevice, http.StatusUnauthorized, "device_mismatch"},
	{quiz.ErrWrongSecret, http.StatusUnauthorized, "device_mismatch"},
	{desk.ErrNobody, http.StatusUnauthorized, "nobody"},
	{desk.ErrWrong, http.StatusUnauthorized, "phrase_mismatch"},
	{class.ErrNotLead, http.StatusUnauthorized, "not_lead"},
	{errForeign, http.StatusForbidden, "foreign"},
	{errPlain, http.StatusForbidden, "not_private"},
	{desk.ErrNotChief, http.StatusForbidden, "not_chief"},
	{desk.ErrWrongCode, http.StatusForbidden, "wrong_code"},
	{class.ErrNotIn, http.StatusForbidden, "not_in"},
	{class.ErrNoEntry, http.StatusNotFound, "no_entry"},
	{class.ErrNoClass, http.StatusNotFound, "no_class"},
	{class.ErrNoPerson, http.StatusNotFound, "no_person"},
	{quiz.ErrNoDoc, http.StatusNotFound, "not_here"},
	{quiz.ErrStale, http.StatusConflict, "changed"},
	{desk.ErrTaken, http.StatusConflict, "taken"},
	{class.ErrSignTaken, http.StatusConflict, "sign_taken"},
	{desk.ErrLastChief, http.StatusConflict, "last_chief"},
	{desk.ErrHasChief, http.StatusConflict, "has_chief"},
	{desk.ErrSlowDown, http.StatusTooManyRequests, "slow_down"},
	{desk.ErrHashing, http.StatusServiceUnavailable, "hashing"},
	{quiz.ErrManyDevices, http.StatusForbidden, "many_devices"},
	{quiz.ErrGap, http.StatusConflict, "gap"},
	{quiz.ErrForked, http.StatusConflict, "forked"},
	{errNotJSON, http.StatusUnsupportedMediaType, "not_json"},
	{errTooMany, http.StatusTooManyRequests, "too_many"},
	{errManyNewcomer, http.StatusTooManyRequests, "many_newcomers"},
	{quiz.ErrFull, http.StatusInsufficientStorage, "disk_full"},
	{quiz.ErrBusy, http.StatusServiceUnavailable, "busy"},
	{quiz.ErrClosed, http.StatusServiceUnavailable, "stopping"},
	{quiz.ErrBroken, http.StatusServiceUnavailable, "broken"},
}

// sentences are for what fiber itself refuses.
var sentences = map[int]problem{
	http.StatusBadRequest:                  {Where: "request", What: "cannot be read", Do: "send a whole HTTP request"},
	http.StatusNotFound:                    {Where: "path", What: "does not exist here", Do: "see the paths in server/httpapi/README.md"},
	http.StatusMethodNotAllowed:            {Where: "method", What: "is not allowed on this path", Do: "see the paths in server/httpapi/README.md"},
	http.StatusRequestTimeout:              {Where: "request", What: "took too long", Do: "send it again"},
	http.StatusRequestEntityTooLarge:       {Where: "body", What: "is larger than this server takes", Do: "send less at a time; nothing was stored"},
	http.StatusUpgradeRequired:             {Where: "request", What: "does not ask for a socket", Do: "connect with a websocket client"},
	http.StatusBadGateway:                  {Where: "request", What: "was cut off", Do: "send it again"},
	http.StatusRequestHeaderFieldsTooLarge: {Where: "headers", What: "are larger than this server takes", Do: "send shorter headers"},
}

// failEarly answers requests that came to no handler: too large, too slow or
// torn. All others are answered by logged. A connection that said nothing is no
// line of the log, which strangers could fill by opening many.
func (a *api) failEarly(c *fiber.Ctx, err error) error {
	if errors.Is(err, fiber.ErrRequestEntityTooLarge) {
		err = a.tooLarge(c, err)
	}
	level := slog.LevelWarn
	if errors.Is(err, fiber.ErrBadGateway) || errors.Is(err, fiber.ErrRequestTimeout) {
		level = slog.LevelDebug
	}
	a.Log.Log(c.Context(), level, "request refused unread", "why", err, "from", c.Context().RemoteAddr().String())
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
	a.secure(c)
	c.Set(fiber.HeaderCacheControl, "no-store")
	return c.Status(status).JSON(body)
}

func (a *api) explain(err error) (int, failure) {
	var gap *gapError
	if errors.As(err, &gap) {
		return http.StatusConflict, failure{Error: coded(quiz.ErrGap, "gap"), Acked: &gap.acked}
	}
	var mistake *engine.Problem
	if errors.As(err, &mistake) {
		status := http.StatusBadRequest
		if refused := (*class.Refused)(nil); errors.As(err, &refused) {
			status = http.StatusConflict
		}
		said := problem{Where: mistake.Where, What: mistake.What, Do: mistake.Do}
		if named := (interface{ Code() string })(nil); errors.As(err, &named) {
			said.Code = named.Code()
		}
		return status, failure{Error: said}
	}
	if errors.Is(err, quiz.ErrUnknownDevice) {
		// Said in the same words as a wrong secret, so that nobody learns which
		// devices exist.
		err = quiz.ErrWrongSecret
	}
	for _, known := range statuses {
		if errors.Is(err, known.err) {
			return known.status, failure{Error: coded(known.err, known.code)}
		}
	}
	var refusal *handover.Refusal
	if errors.As(err, &refusal) {
		return refusal.Status, failure{Error: problem{Where: "socket", What: "was refused", Do: "connect with a websocket client from this server's own address"}}
	}
	var own *fiber.Error
	if errors.As(err, &own) {
		if sentence, ok := sentences[own.Code]; ok {
			return own.Code, failure{Error: sentence}
		}
	}
	a.Log.Error("request failed", "err", err)
	return http.StatusInternalServerError, failure{Error: problem{Where: "server", What: "failed at this request", Do: "send it again; if it fails again, ask the server's keeper to look at the log"}}
}

// split turns "what: do" into its two halves.
func split(err error) problem {
	what, do, _ := strings.Cut(err.Error(), ": ")
	return problem{What: what, Do: do}
}

func coded(err error, code string) problem {
	said := split(err)
	said.Code = code
	return said
}

// gapError is ErrGap with the number to go on from.
type gapError struct{ acked uint64 }

func (e *gapError) Error() string { return quiz.ErrGap.Error() }
