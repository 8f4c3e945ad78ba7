package httpapi

import (
	"net/url"
	"strings"

	"github.com/gofiber/fiber/v2"
	"github.com/valyala/fasthttp"
)

// policy lets the app load its own files and nothing else: no foreign host, no
// inline script or style, no frame. 'wasm-unsafe-eval' is what compiling the
// engine takes (CSP level 3, section 6.1.10) and allows no JavaScript eval.
const policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; " +
	"font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; " +
	"base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// fixed are the headers of every answer.
var fixed = [][2]string{
	{"Content-Security-Policy", policy},
	{"X-Content-Type-Options", "nosniff"},
	{"X-Frame-Options", "DENY"},
	{"Referrer-Policy", "no-referrer"},
	{"Cross-Origin-Opener-Policy", "same-origin"},
	{"Cross-Origin-Resource-Policy", "same-origin"},
	{"Permissions-Policy", "camera=(), microphone=(), geolocation=(), payment=(), usb=(), display-capture=()"},
}

// stayEncrypted has a browser that came by https come by nothing else for a year
// (RFC 6797, which leaves addresses without a name alone: the plain http of a
// laptop at the drill ground is not touched; from memory, to be confirmed). It is
// not said of localhost, where browsers would keep it too: all else that this
// machine serves by plain http would be out of reach, the sign-in on it first.
const stayEncrypted = "max-age=31536000"

func (a *api) secure(c *fiber.Ctx) {
	fix(&c.Response().Header)
	if a.encrypted(c) && !strings.EqualFold(hostOf(c), "localhost") {
		c.Set(fiber.HeaderStrictTransportSecurity, stayEncrypted)
	}
}

func (a *api) secured(c *fiber.Ctx) error {
	a.secure(c)
	return c.Next()
}

// headed gives the fixed headers to what fiber answers before any handler of ours, to a
// method that it does not know.
func headed(answer fasthttp.RequestHandler) fasthttp.RequestHandler {
	return func(c *fasthttp.RequestCtx) {
		answer(c)
		if !c.Hijacked() && len(c.Response.Header.Peek(fixed[0][0])) == 0 {
			fix(&c.Response.Header)
		}
	}
}

func fix(answer *fasthttp.ResponseHeader) {
	for _, header := range fixed {
		answer.Set(header[0], header[1])
	}
}

// private keeps answers of the API out of every cache.
func private(c *fiber.Ctx) error {
	c.Set(fiber.HeaderCacheControl, "no-store")
	return c.Next()
}

// sameOrigin refuses what a browser sends on behalf of another site. A device's
// secret is never sent by itself, as a cookie would be, so this is a second wall.
func sameOrigin(c *fiber.Ctx) error {
	if origin := c.Get(fiber.HeaderOrigin); origin != "" {
		from, err := url.Parse(origin)
		if err != nil || from.Host == "" || !strings.EqualFold(from.Host, string(c.Request().Header.Host())) {
			return errForeign
		}
	}
	if site := c.Get("Sec-Fetch-Site"); site == "cross-site" || site == "same-site" {
		return errForeign
	}
	return c.Next()
}

// jsonOnly refuses other bodies, packed ones too: fiber would unpack them
// without a limit.
func jsonOnly(c *fiber.Ctx) error {
	kind, _, _ := strings.Cut(c.Get(fiber.HeaderContentType), ";")
	packed := c.Get(fiber.HeaderContentEncoding)
	if !strings.EqualFold(strings.TrimSpace(kind), fiber.MIMEApplicationJSON) || packed != "" && packed != "identity" {
		return errNotJSON
	}
	return c.Next()
}
