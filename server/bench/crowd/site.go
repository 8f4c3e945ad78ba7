// Package crowd plays an instructor and many phones of one class over real
// sockets of this machine, to measure a server with.
package crowd

import (
	"bytes"
	"context"
	"crypto/tls"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"time"

	"lintel/quiz/session"
)

// Site is a server that is being measured.
type Site struct {
	URL    string // with a slash at its end
	Client *http.Client
}

// NewSite returns a site whose client keeps cookies and connections, and takes
// the certificate that the bench made itself.
func NewSite(at string) (*Site, error) {
	if host, err := url.Parse(at); err != nil || !isLoopback(host.Hostname()) {
		return nil, fmt.Errorf("crowd: %s is not this machine: measure there with consent and other tools", at)
	}
	jar, err := cookiejar.New(nil)
	if err != nil {
		return nil, err
	}
	return &Site{URL: at, Client: &http.Client{Jar: jar, Timeout: 60 * time.Second, Transport: &http.Transport{
		MaxIdleConnsPerHost: 512, MaxConnsPerHost: 512, TLSClientConfig: trusting(),
	}}}, nil
}

func isLoopback(host string) bool {
	ip := net.ParseIP(host)
	return ip != nil && ip.IsLoopback()
}

// trusting takes any certificate: the server is this machine's own, started by
// the bench a moment ago.
func trusting() *tls.Config { return &tls.Config{InsecureSkipVerify: true} } //nolint:gosec // loopback only, see NewSite

// Call sends a body as JSON and decodes the answer. A status outside 2xx is an
// error that holds what the server said.
func (s *Site) Call(ctx context.Context, method, path, authorization string, body, into any) error {
	var text io.Reader
	if body != nil {
		encoded, err := json.Marshal(body)
		if err != nil {
			return err
		}
		text = bytes.NewReader(encoded)
	}
	request, err := http.NewRequestWithContext(ctx, method, s.URL+path, text)
	if err != nil {
		return err
	}
	if body != nil {
		request.Header.Set("Content-Type", "application/json")
	}
	if authorization != "" {
		request.Header.Set("Authorization", authorization)
	}
	reply, err := s.Client.Do(request)
	if err != nil {
		return err
	}
	defer reply.Body.Close()
	answer, err := io.ReadAll(reply.Body)
	if err != nil {
		return err
	}
	if reply.StatusCode/100 != 2 {
		return &Refused{Status: reply.StatusCode, Said: string(answer)}
	}
	if into == nil {
		return nil
	}
	return json.Unmarshal(answer, into)
}

// Refused is an answer other than success.
type Refused struct {
	Status int
	Said   string
}

func (r *Refused) Error() string { return fmt.Sprintf("crowd: %d: %s", r.Status, r.Said) }

// Class is an open class as its instructor holds it.
type Class struct {
	*Site
	ID, Token string
}

// Open makes the first instructor with the set-up code and opens a class of
// the given scenes, led.
func (s *Site) Open(ctx context.Context, setUp string, scenes []map[string]any) (*Class, error) {
	if err := s.Call(ctx, "POST", "api/v1/setup", "", map[string]any{"v": 1, "code": setUp, "call_sign": "Chief 1", "pass_phrase": "smoke over the lintel"}, nil); err != nil {
		return nil, err
	}
	var opened struct {
		Class struct {
			ID   string `json:"id"`
			Door struct{ Token string }
		}
	}
	plan := map[string]any{"v": 1, "title": "Measured", "scenes": scenes, "pace": "led"}
	if err := s.Call(ctx, "POST", "api/v1/classes", "", plan, &opened); err != nil {
		return nil, err
	}
	return &Class{Site: s, ID: opened.Class.ID, Token: opened.Class.Door.Token}, nil
}

// Do acts as the instructor and returns the class's seq afterwards.
func (c *Class) Do(ctx context.Context, act map[string]any) (uint64, error) {
	var done struct{ Seq uint64 }
	err := c.Call(ctx, "POST", "api/v1/classes/"+c.ID+"/do", "", map[string]any{"v": 1, "act": act}, &done)
	return done.Seq, err
}

// Report is what the server holds of the class.
func (c *Class) Report(ctx context.Context) (session.Report, error) {
	var answer struct{ Report session.Report }
	err := c.Call(ctx, "GET", "api/v1/classes/"+c.ID+"/report", "", nil, &answer)
	return answer.Report, err
}
