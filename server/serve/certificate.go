package serve

import (
	"crypto/tls"
	"os"
	"sync"
	"time"

	"lintel/engine"
)

// lookAgain is how often the files of a certificate are looked at for a newer one
// (chosen by us): one that is renewed every few weeks takes no restart.
const lookAgain = time.Minute

// certificate is a certificate in two files, read again when they change.
type certificate struct {
	cert, key string

	mu     sync.Mutex
	held   *tls.Certificate
	ofMS   int64 // when the file that is held was written
	looked time.Time
}

// certified makes the TLS of an own certificate, or nil where no files are named.
func certified(cert, key string) (*tls.Config, error) {
	if cert == "" && key == "" {
		return nil, nil
	}
	if cert == "" || key == "" {
		return nil, engine.Bad("-tls-cert", "and -tls-key go together", "name both files or neither")
	}
	c := &certificate{cert: cert, key: key}
	if err := c.read(); err != nil {
		return nil, engine.Bad(cert, "cannot be used ("+err.Error()+")", "name a certificate chain with -tls-cert and its key with -tls-key, both in PEM")
	}
	return &tls.Config{
		GetCertificate: func(*tls.ClientHelloInfo) (*tls.Certificate, error) { return c.now(), nil },
		NextProtos:     []string{"http/1.1"},
		MinVersion:     tls.VersionTLS12,
	}, nil
}

func (c *certificate) read() error {
	info, err := os.Stat(c.cert)
	if err != nil {
		return err
	}
	pair, err := tls.LoadX509KeyPair(c.cert, c.key)
	if err != nil {
		return err
	}
	c.held, c.ofMS, c.looked = &pair, info.ModTime().UnixMilli(), time.Now()
	return nil
}

// now is the certificate as the files have it. While they are being written, or
// are unfit, the one before stands.
func (c *certificate) now() *tls.Certificate {
	c.mu.Lock()
	defer c.mu.Unlock()
	if time.Since(c.looked) < lookAgain {
		return c.held
	}
	c.looked = time.Now()
	if info, err := os.Stat(c.cert); err == nil && info.ModTime().UnixMilli() != c.ofMS {
		_ = c.read()
	}
	return c.held
}
