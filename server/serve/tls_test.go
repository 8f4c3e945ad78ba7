package serve_test

import (
	"bytes"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"math/big"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/server/serve"
	"lintel/server/store/storetest"
)

// certify writes a certificate for loopback and returns its files, and the pool
// that trusts it.
func certify(t *testing.T) (cert, key string, pool *x509.CertPool) {
	t.Helper()
	private, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	require.NoError(t, err)
	template := &x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: "lintel.test"}, IPAddresses: []net.IP{net.IPv4(127, 0, 0, 1)},
		NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(time.Hour), IsCA: true, BasicConstraintsValid: true,
	}
	der, err := x509.CreateCertificate(rand.Reader, template, template, &private.PublicKey, private)
	require.NoError(t, err)
	spelled, err := x509.MarshalECPrivateKey(private)
	require.NoError(t, err)
	folder := t.TempDir()
	cert, key = filepath.Join(folder, "cert.pem"), filepath.Join(folder, "key.pem")
	chain := pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der})
	require.NoError(t, os.WriteFile(cert, chain, 0o600))
	require.NoError(t, os.WriteFile(key, pem.EncodeToMemory(&pem.Block{Type: "EC PRIVATE KEY", Bytes: spelled}), 0o600))
	pool = x509.NewCertPool()
	require.True(t, pool.AppendCertsFromPEM(chain))
	return cert, key, pool
}

func TestAnOwnCertificate(t *testing.T) {
	cert, key, pool := certify(t)
	s := startWith(t, t.TempDir(), func(c *configuration) { c.TLSCert, c.TLSKey = cert, key })
	trusting := &tls.Config{RootCAs: pool}
	client := &http.Client{Transport: &http.Transport{TLSClientConfig: trusting}}
	defer client.CloseIdleConnections()
	url := "https://" + s.Addr().String()
	post := func(path, body string) *http.Response {
		got, err := client.Post(url+path, "application/json", strings.NewReader(body))
		require.NoError(t, err)
		got.Body.Close()
		return got
	}
	code, err := s.SetUpCode()
	require.NoError(t, err)
	got := post("/api/v1/setup", `{"v":1,"code":"`+code+`","call_sign":"Chief 1","pass_phrase":"`+phrase+`"}`)
	require.Equal(t, 201, got.StatusCode)
	for _, line := range got.Header.Values("Set-Cookie") {
		assert.Regexp(t, `^__Host-lintel\w*=.*; path=/; HttpOnly; secure; SameSite=Strict$`, line)
	}
	assert.Equal(t, "max-age=31536000", got.Header.Get("Strict-Transport-Security"))
	ask, err := http.NewRequest("GET", url+"/healthz", nil)
	require.NoError(t, err)
	ask.Host = "localhost:" + s.Addr().String()[strings.LastIndex(s.Addr().String(), ":")+1:]
	local, err := client.Do(ask)
	require.NoError(t, err)
	local.Body.Close()
	assert.Empty(t, local.Header.Get("Strict-Transport-Security"), "plain http on this machine stays in reach")
	session := got.Header.Values("Set-Cookie")[0]
	session, _, _ = strings.Cut(session, ";")
	me := func(cookie string) int {
		ask, err := http.NewRequest("GET", url+"/api/v1/me", nil)
		require.NoError(t, err)
		ask.Header.Set("Cookie", cookie)
		got, err := client.Do(ask)
		require.NoError(t, err)
		got.Body.Close()
		return got.StatusCode
	}
	assert.Equal(t, 200, me(session))
	assert.Equal(t, 401, me(strings.TrimPrefix(session, "__Host-")), "planted by somebody on the way")
	got = post("/api/v1/devices", `{"v":1,"device":"`+storetest.ID(1)+`","secret":"`+storetest.Secret(1)+`","call_sign":"Engine 1"}`)
	require.Equal(t, 201, got.StatusCode)
	dialer := websocket.Dialer{TLSClientConfig: trusting}
	ws, _, err := dialer.Dial("wss://"+s.Addr().String()+"/api/v1/live", http.Header{"Origin": {url}})
	require.NoError(t, err)
	defer ws.Close()
	require.NoError(t, ws.WriteJSON(map[string]string{"device": storetest.ID(1), "secret": storetest.Secret(1)}))
	requireFrame(t, ws, `{"kind":"version","engine":"0.1.0","content":"c1"}`)
	_, err = tls.Dial("tcp", s.Addr().String(), &tls.Config{RootCAs: pool, MaxVersion: tls.VersionTLS11})
	require.Error(t, err)
}

func TestACertificateThatCannotBeUsed(t *testing.T) {
	cert, key, _ := certify(t)
	junk := filepath.Join(t.TempDir(), "junk.pem")
	require.NoError(t, os.WriteFile(junk, bytes.Repeat([]byte("x"), 50), 0o600))
	for name, files := range map[string][2]string{"no key": {cert, ""}, "no certificate": {"", key}, "junk": {junk, key}, "the wrong way round": {key, cert}, "not there": {cert + "x", key}} {
		t.Run(name, func(t *testing.T) {
			c := config(t.TempDir())
			c.TLSCert, c.TLSKey = files[0], files[1]
			_, err := serve.Run(c)
			require.ErrorContains(t, err, "-tls-key")
			assert.NotContains(t, err.Error(), "\n")
		})
	}
}
