package httpapi

import (
	"net"
	"net/netip"
	"strings"
	"time"

	"github.com/gofiber/fiber/v2"

	"lintel/quiz"
	"lintel/server/desk"
)

// The cookies: a sign-in, and what tells a browser that was signed in before.
const (
	sessionCookie = "lintel"
	browserCookie = "lintel_known"
)

// securely stands before a cookie's name where it goes by TLS only.
const securely = "__Host-"

const instructorLocal = "instructor"

// encrypted reports whether what the browser sends cannot be read on the way: TLS
// ends here, or in a proxy on this machine that says so.
func (a *api) encrypted(c *fiber.Ctx) bool {
	if c.Context().IsTLS() {
		return true
	}
	return a.BehindHTTPS && fromHere(c) && c.Get("X-Forwarded-Proto") == "https"
}

// ownMachine reports whether the browser runs on the server's own machine and
// calls it by a loopback name. A request that a proxy passed on does not count: it
// has one of these headers. An empty one counts too, as some proxies put theirs
// behind one that a stranger sent.
func ownMachine(c *fiber.Ctx) bool {
	for _, header := range []string{"X-Forwarded-For", "X-Forwarded-Proto", "X-Forwarded-Host", "X-Real-Ip", "Forwarded", "Via"} {
		if len(c.Request().Header.PeekAll(header)) > 0 {
			return false
		}
	}
	host := hostOf(c)
	addr, err := netip.ParseAddr(strings.Trim(host, "[]"))
	loopback := strings.EqualFold(host, "localhost") || err == nil && addr.IsLoopback()
	return loopback && fromHere(c)
}

// hostOf is the name or address by which the browser called, without a port.
func hostOf(c *fiber.Ctx) string {
	host := string(c.Request().Header.Host())
	if name, _, err := net.SplitHostPort(host); err == nil {
		return name
	}
	return host
}

func fromHere(c *fiber.Ctx) bool {
	addr, err := netip.ParseAddrPort(c.Context().RemoteAddr().String())
	return err == nil && addr.Addr().Unmap().IsLoopback()
}

// trusted lets a request pass on whose connection a pass phrase may travel.
func (a *api) trusted(c *fiber.Ctx) error {
	if !a.encrypted(c) && !ownMachine(c) {
		return errPlain
	}
	return c.Next()
}

// instructor lets a request pass that carries a sign-in, on such a connection.
func (a *api) instructor(c *fiber.Ctx) error {
	who, err := a.whoIs(c)
	if err != nil {
		return err
	}
	if !a.limits.request("instructor "+who.ID, len(c.Request().Body())) {
		return errTooMany
	}
	c.Locals(instructorLocal, who)
	return c.Next()
}

func (a *api) whoIs(c *fiber.Ctx) (quiz.Instructor, error) {
	if !a.encrypted(c) && !ownMachine(c) {
		return quiz.Instructor{}, errPlain
	}
	return a.Desk.WhoIs(a.held(c, sessionCookie))
}

// instructorOf is the instructor that instructor let pass.
func instructorOf(c *fiber.Ctx) quiz.Instructor {
	return c.Locals(instructorLocal).(quiz.Instructor)
}

// from is what is known of where a sign-in comes from.
func (a *api) from(c *fiber.Ctx) desk.From {
	return desk.From{Own: ownMachine(c), Browser: a.held(c, browserCookie)}
}

// remember hands the browser its cookies. No script can read them, and no other
// site can have them sent.
func (a *api) remember(c *fiber.Ctx, in desk.SignedIn) {
	a.cookie(c, sessionCookie, in.Session, time.UnixMilli(in.UntilMS))
	a.cookie(c, browserCookie, in.Browser, a.Now().AddDate(1, 0, 0))
}

func (a *api) cookie(c *fiber.Ctx, name, value string, until time.Time) {
	name, path := a.spelled(c, name)
	c.Cookie(&fiber.Cookie{
		Name: name, Value: value, Path: path, Expires: until,
		HTTPOnly: true, SameSite: fiber.CookieSameSiteStrictMode, Secure: a.encrypted(c),
	})
}

// held is what a cookie of the browser says, copied; empty where it has none.
func (a *api) held(c *fiber.Ctx, name string) string {
	name, _ = a.spelled(c, name)
	return strings.Clone(c.Cookies(name))
}

// spelled is a cookie's name and path as they go over this connection. Under TLS a
// browser takes one of this prefix from this very host by TLS only, so that nobody
// on the way plants a sign-in of theirs (RFC 6265bis, section 4.1.3.2; it asks for
// the path; from memory, to be confirmed).
func (a *api) spelled(c *fiber.Ctx, name string) (spelled, path string) {
	if a.encrypted(c) {
		return securely + name, "/"
	}
	return name, "/api/v1"
}
