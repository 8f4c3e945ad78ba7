package httpapi_test

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	forever = "public, max-age=31536000, immutable"
	anew    = "no-cache"
)

func TestFiles(t *testing.T) {
	a := newApp(t)
	for _, c := range []struct {
		path, accept, kind, keep, coding, body string
	}{
		{"/", "", "text/html; charset=utf-8", anew, "", string(files["index.html"].Data)},
		{"/", "gzip, br", "text/html; charset=utf-8", anew, "br", "packed page"},
		{"/", "gzip, br;q=0", "text/html; charset=utf-8", anew, "", string(files["index.html"].Data)},
		{"/drill/stage", "", "text/html; charset=utf-8", anew, "", string(files["index.html"].Data)},
		{"/index.html", "br", "text/html; charset=utf-8", anew, "br", "packed page"},
		{"/sw.js", "br", "text/javascript; charset=utf-8", anew, "", "self.oninstall = () => {}"},
		{"/manifest.webmanifest", "", "application/manifest+json", anew, "", "{}"},
		{"/icons/icon.svg", "", "image/svg+xml", anew, "", "<svg/>"},
		{"/assets/engine-ab12.wasm", "", "application/wasm", forever, "", string(files["assets/engine-ab12.wasm"].Data)},
		{"/assets/engine-ab12.wasm", "gzip, deflate, br", "application/wasm", forever, "br", "packed engine"},
		{"/assets/engine-ab12.wasm", "gzip", "application/wasm", forever, "gzip", "packed engine, less well"},
		{"/assets/app-cd34.js", "br", "text/javascript; charset=utf-8", forever, "", "1"},
	} {
		t.Run(c.path+" "+c.accept, func(t *testing.T) {
			reply, body := a.ask("GET", c.path, "", "Accept-Encoding", c.accept)
			require.Equal(t, 200, reply.StatusCode)
			assert.Equal(t, c.kind, reply.Header.Get("Content-Type"))
			assert.Equal(t, c.keep, reply.Header.Get("Cache-Control"))
			assert.Equal(t, c.coding, reply.Header.Get("Content-Encoding"))
			assert.Equal(t, c.body, body)

			tag := reply.Header.Get("ETag")
			require.NotEmpty(t, tag)
			reply, body = a.ask("GET", c.path, "", "Accept-Encoding", c.accept, "If-None-Match", tag)
			assert.Equal(t, 304, reply.StatusCode)
			assert.Empty(t, body)
		})
	}
}

// A style or a script written into a page is allowed by its digest and by nothing wider (CSP
// level 3). The digest was made with openssl dgst -sha256 -binary | base64.
func TestWhatIsInAPageIsAllowedByItsDigest(t *testing.T) {
	a := newAppWith(t, fstest.MapFS{
		"index.html": {Data: []byte("<!doctype html><style>p{margin:0}</style><p>Home<script>start()</script>")},
		"shell.html": {Data: []byte("<!doctype html><p>Shell")},
	})
	reply, body := a.ask("GET", "/", "")
	assert.Contains(t, body, "Home")
	assert.Contains(t, reply.Header.Get("Content-Security-Policy"), "style-src 'self' 'sha256-QRQPRLGyxt3RJiKpYNjpkgHcmHU2PywsfL2e8oI0LQA='; ")
	assert.Contains(t, reply.Header.Get("Content-Security-Policy"), "script-src 'self' 'sha256-DIm7WJS6ZKDYe5qFLPy+h4JFI9Bol5QmYC57mt3Fb00=' 'wasm-unsafe-eval'; ")
	reply, body = a.ask("GET", "/drill", "")
	assert.Contains(t, body, "Shell")
	assert.Contains(t, reply.Header.Get("Content-Security-Policy"), "style-src 'self'; ")
	assert.Contains(t, reply.Header.Get("Content-Security-Policy"), "script-src 'self' 'wasm-unsafe-eval'; ")
}

func TestTagsDifferByCoding(t *testing.T) {
	a := newApp(t)
	plain, _ := a.ask("GET", "/", "")
	packed, _ := a.ask("GET", "/", "", "Accept-Encoding", "br")
	assert.NotEqual(t, plain.Header.Get("ETag"), packed.Header.Get("ETag"))
	assert.Equal(t, "Accept-Encoding", plain.Header.Get("Vary"))
}

func TestHeadHasNoBody(t *testing.T) {
	reply, body := newApp(t).ask("HEAD", "/sw.js", "")
	assert.Equal(t, 200, reply.StatusCode)
	assert.Equal(t, "25", reply.Header.Get("Content-Length"))
	assert.Empty(t, body)
}

func TestWhatIsNotThere(t *testing.T) {
	a := newApp(t)
	for _, path := range []string{
		"/assets/gone-ef56.js", "/robots.txt", "/.git/config.json", "/assets/../../etc/passwd.txt", "/..%2f..%2fetc/passwd.txt",
		"/index.html.br", "/api", "/api/", "/api/v1", "/api/v1/devices/all", "/api/v2/state", "/api/v1/State",
	} {
		reply, body := a.ask("GET", path, "")
		assert.Equal(t, 404, reply.StatusCode, path)
		assert.JSONEq(t, `{"error":{"where":"path","what":"does not exist here","do":"see the paths in server/httpapi/README.md"}}`, body, path)
	}
	for _, method := range []string{"POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE"} {
		reply, body := a.ask(method, "/", "")
		assert.Contains(t, []int{404, 405}, reply.StatusCode, method)
		assert.Contains(t, body, `"error"`, method)
	}
}

func TestASiteWithoutAPage(t *testing.T) {
	a := newAppWith(t, fstest.MapFS{})
	reply, _ := a.ask("GET", "/", "")
	assert.Equal(t, 404, reply.StatusCode)
}
