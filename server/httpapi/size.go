package httpapi

import (
	"strings"

	"github.com/gofiber/fiber/v2"
	"github.com/valyala/fasthttp"
	"golang.org/x/time/rate"

	"lintel/quiz"
	"lintel/server/class"
)

// How large a body may be is said before it is read, by who says that they send it:
// fasthttp makes room for the whole of it as soon as its length was declared. 3,000
// connections of strangers that declared 1 MiB and sent one byte took 3 GB (measured),
// and 16,000 can be opened. All chosen by us: what registers, joins and signs in takes
// under 1 KiB, an answer about 10. Larger ones of those whom the server knows, which
// anybody can become by registering, take what is left of a sum that comes back within
// the time that a body may take.
const (
	strangersBody = 8 << 10
	alwaysBody    = 32 << 10
	largeBodies   = 256 << 20
)

func newLargeBodies() *rate.Limiter {
	return rate.NewLimiter(rate.Limit(largeBodies/readTimeout.Seconds()), largeBodies)
}

// large reports whether there is room now for one more large body.
func (l *limits) large(bytes int) bool { return l.bodies.AllowN(l.now(), bytes) }

// sized is told of each request when its headers have been read.
func (a *api) sized(header *fasthttp.RequestHeader) fasthttp.RequestConfig {
	return fasthttp.RequestConfig{MaxRequestBodySize: a.mostOf(header)}
}

func (a *api) mostOf(header *fasthttp.RequestHeader) int {
	length := header.ContentLength()
	if length == undeclared {
		length = maxBody
	}
	switch {
	case length <= strangersBody || !a.knows(header):
		return strangersBody
	case length <= alwaysBody || length > maxBody || !a.limits.large(length):
		return alwaysBody
	}
	return maxBody
}

// tooLarge is why a body is refused from its headers. Who is not known is told so, as of
// a smaller one: a device then registers and sends again, an instructor signs in. Where
// there is no room for now, the same body may be sent later.
func (a *api) tooLarge(c *fiber.Ctx, err error) error {
	header := &c.Request().Header
	if length := header.ContentLength(); length <= strangersBody || length > maxBody {
		return err // of one in chunks fasthttp has forgotten the headers
	}
	if a.knows(header) {
		return quiz.ErrBusy
	}
	if id, secret, ok := claimOf(c); ok {
		_, err = a.Store.Authenticate(id, secret)
		return err
	}
	if len(header.Peek(fiber.HeaderAuthorization)) > 0 {
		return class.ErrNotLead
	}
	_, err = a.whoIs(c)
	return err
}

// undeclared is the length of a body that comes in chunks (fasthttp, RequestHeader).
const undeclared = -1

// knows reports whether a request comes from a device, a lead or an instructor. What
// each may do is asked again where it is done.
func (a *api) knows(header *fasthttp.RequestHeader) bool {
	authorization := string(header.Peek("Authorization"))
	if id, secret, ok := claimIn(authorization); ok {
		_, err := a.Store.Authenticate(id, secret)
		return err == nil
	}
	if scheme, key, _ := strings.Cut(authorization, " "); strings.EqualFold(scheme, "Lead") {
		_, _, err := a.Classes.LeadOf(key)
		return err == nil
	}
	for _, name := range []string{sessionCookie, securely + sessionCookie} {
		if _, err := a.Desk.WhoIs(string(header.Cookie(name))); err == nil {
			return true
		}
	}
	return false
}
