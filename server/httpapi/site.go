package httpapi

import (
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"io/fs"
	"path"
	"regexp"
	"strings"

	"github.com/gofiber/fiber/v2"
)

// page is what "/" opens, with the first screen written into it; every other
// screen's address opens shell, the same without.
const (
	page  = "index.html"
	shell = "shell.html"
)

// How long a browser may keep a file. A file under assets/ has a fingerprint of
// its bytes in its name, so it never changes; all others are asked for anew.
const (
	keepForever = "public, max-age=31536000, immutable"
	askAgain    = "no-cache"
)

// kinds are the content types by extension. They are spelled out because the
// operating system's table differs from machine to machine.
var kinds = map[string]string{
	".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".mjs": "text/javascript; charset=utf-8",
	".css": "text/css; charset=utf-8", ".json": "application/json", ".webmanifest": "application/manifest+json",
	".wasm": "application/wasm", ".svg": "image/svg+xml", ".png": "image/png", ".webp": "image/webp", ".jpg": "image/jpeg",
	".ico": "image/x-icon", ".woff2": "font/woff2", ".txt": "text/plain; charset=utf-8", ".map": "application/json",
}

// packings are the compressed twins of a file, best first.
var packings = []struct{ name, ext string }{{"br", ".br"}, {"gzip", ".gz"}}

// asset is one file of the app as it is sent.
type asset struct {
	kind, keep, tag string
	policy          string // of a page with a style of its own, else empty
	plain           []byte
	packed          map[string][]byte // by content coding
}

// site is the whole app in memory, where the embedded files are anyway. Only
// what was there at the start is ever served: a path is looked up, not opened.
type site struct {
	assets map[string]*asset
}

func loadSite(tree fs.FS) (*site, error) {
	s := &site{assets: map[string]*asset{}}
	packed := map[string][]byte{}
	err := fs.WalkDir(tree, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := fs.ReadFile(tree, name)
		if err != nil {
			return err
		}
		if isPacked(name) {
			packed[name] = text
			return nil
		}
		s.assets[name] = newAsset(name, text)
		return nil
	})
	if err != nil {
		return nil, err
	}
	for name, a := range s.assets {
		for _, p := range packings {
			if text, ok := packed[name+p.ext]; ok && len(text) < len(a.plain) {
				a.packed[p.name] = text
			}
		}
	}
	return s, nil
}

func isPacked(name string) bool {
	for _, p := range packings {
		if path.Ext(name) == p.ext {
			return true
		}
	}
	return false
}

func newAsset(name string, text []byte) *asset {
	kind, ok := kinds[path.Ext(name)]
	if !ok {
		kind = "application/octet-stream"
	}
	keep := askAgain
	if strings.HasPrefix(name, "assets/") {
		keep = keepForever
	}
	sum := sha256.Sum256(text)
	a := &asset{kind: kind, keep: keep, tag: hex.EncodeToString(sum[:16]), plain: text, packed: map[string][]byte{}}
	if path.Ext(name) == ".html" {
		a.policy = policyFor(text)
	}
	return a
}

// inlined finds the styles and the scripts that are written into a page.
var inlined = map[string]*regexp.Regexp{
	"style-src 'self'":  regexp.MustCompile(`(?s)<style>(.*?)</style>`),
	"script-src 'self'": regexp.MustCompile(`(?s)<script>(.*?)</script>`),
}

// policyFor lets a page use the very styles and scripts written into it, by
// their digest (CSP level 3, section 2.3.1), and no others.
func policyFor(text []byte) string {
	whole := policy
	for own, written := range inlined {
		allowed := own
		for _, found := range written.FindAllSubmatch(text, -1) {
			sum := sha256.Sum256(found[1])
			allowed += " 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
		}
		whole = strings.Replace(whole, own, allowed, 1)
	}
	return whole
}

// getSite sends a file of the app, or the page for an address that only the app
// knows. A missing file is missing: a page in its place would be kept as the file.
func (a *api) getSite(c *fiber.Ctx) error {
	name := strings.TrimPrefix(c.Path(), "/")
	if found, ok := a.site.assets[name]; ok {
		return found.send(c)
	}
	if path.Ext(name) != "" {
		return fiber.ErrNotFound
	}
	wanted := []string{shell, page} // an unbuilt site has no shell
	if name == "" {
		wanted = []string{page}
	}
	for _, name := range wanted {
		if found, ok := a.site.assets[name]; ok {
			return found.send(c)
		}
	}
	return fiber.ErrNotFound
}

func (f *asset) send(c *fiber.Ctx) error {
	body, coding := f.plain, ""
	for _, p := range packings {
		if text, ok := f.packed[p.name]; ok && accepts(c.Get(fiber.HeaderAcceptEncoding), p.name) {
			body, coding = text, p.name
			break
		}
	}
	c.Set(fiber.HeaderContentType, f.kind)
	c.Set(fiber.HeaderCacheControl, f.keep)
	if f.policy != "" {
		c.Set(fiber.HeaderContentSecurityPolicy, f.policy)
	}
	tag := `"` + f.tag + coding + `"`
	c.Set(fiber.HeaderETag, tag)
	if len(f.packed) > 0 {
		c.Set(fiber.HeaderVary, fiber.HeaderAcceptEncoding)
	}
	if c.Get(fiber.HeaderIfNoneMatch) == tag {
		return c.SendStatus(fiber.StatusNotModified)
	}
	if coding != "" {
		c.Set(fiber.HeaderContentEncoding, coding)
	}
	c.Context().Response.SetBodyRaw(body)
	return nil
}

// accepts reports whether an Accept-Encoding header names a coding without
// refusing it by q=0.
func accepts(header, coding string) bool {
	for part := range strings.SplitSeq(header, ",") {
		name, weight, _ := strings.Cut(part, ";")
		if !strings.EqualFold(strings.TrimSpace(name), coding) {
			continue
		}
		q := strings.TrimSpace(strings.ToLower(weight))
		return q != "q=0" && !strings.HasPrefix(q, "q=0.000") && q != "q=0.0" && q != "q=0.00"
	}
	return false
}
