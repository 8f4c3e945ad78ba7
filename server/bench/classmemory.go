package bench

import (
	"bufio"
	"context"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/x509"
	"encoding/pem"
	"errors"
	"fmt"
	"math/big"
	"net"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

const (
	idlePhones = 1000
	idleFor    = 5 * time.Second
	idleGoal   = 1.25
	idleRounds = 3 // of ours and the control by turns; odd, for a median that was measured
)

// classMemory is what an idle phone costs. Control: the same on the bare hub.
var classMemory = Figure{
	Name: "class_memory", Unit: "ratio", Goal: "1.25, with and without TLS", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		plain, err := idleByTurns(ctx)
		if err != nil {
			return Result{}, err
		}
		folder, err := os.MkdirTemp("", "lintel-bench-*")
		if err != nil {
			return Result{}, err
		}
		defer os.RemoveAll(folder)
		cert, key, err := certificate(folder)
		if err != nil {
			return Result{}, err
		}
		secure, err := idleByTurns(ctx, "-tls-cert", cert, "-tls-key", key)
		if err != nil {
			return Result{}, err
		}
		return Result{
			Ours:    map[string]float64{"plain": plain.ratio, "tls": secure.ratio},
			Control: map[string]float64{"plain_kib": plain.bare, "tls_kib": secure.bare},
			Holds:   plain.ratio <= idleGoal && secure.ratio <= idleGoal,
			How: fmt.Sprintf("growth of resident memory over %d connected phones, %v after the last (ours %.1f KiB a phone, %.1f with TLS), medians of %d rounds by turns; control: the bare hub's KiB a phone, gorilla on net/http with small buffers and a pool for writing",
				idlePhones, idleFor, plain.ours, secure.ours, idleRounds),
		}, nil
	},
}

// idleCost is KiB a phone and their ratio, each a median.
type idleCost struct{ ours, bare, ratio float64 }

func idleByTurns(ctx context.Context, flags ...string) (idleCost, error) {
	var ours, bare, ratios []float64
	for range idleRounds {
		our, bar, err := idle(ctx, flags...)
		if err != nil {
			return idleCost{}, err
		}
		ours, bare, ratios = append(ours, our), append(bare, bar), append(ratios, our/bar)
	}
	return idleCost{median(ours), median(bare), median(ratios)}, nil
}

// idle returns KiB a phone, ours and the bare hub's.
func idle(ctx context.Context, flags ...string) (ours, bare float64, err error) {
	h, err := openHall(ctx, idlePhones, flags...)
	if err != nil {
		return 0, 0, err
	}
	// A server that has just let a thousand phones join holds memory to spare, in
	// which their sockets would not show: it starts afresh.
	if err := h.restart(ctx, flags...); err != nil {
		return 0, 0, errors.Join(err, h.close())
	}
	ours, err = growth(h.server.cmd.Process.Pid, func() error { return h.connect(ctx) })
	if err = errors.Join(err, h.close()); err != nil {
		return 0, 0, err
	}
	b, err := startBareHub(ctx, flags...)
	if err != nil {
		return 0, 0, err
	}
	bare, err = growth(b.cmd.Process.Pid, func() error { return b.connect(ctx, idlePhones) })
	return ours, bare, errors.Join(err, b.close())
}

func growth(pid int, connect func() error) (float64, error) {
	time.Sleep(idleFor)
	before, err := resident(pid)
	if err != nil {
		return 0, err
	}
	if err := connect(); err != nil {
		return 0, err
	}
	time.Sleep(idleFor)
	after, err := resident(pid)
	return float64(after-before) / idlePhones, err
}

// resident is a process's resident memory in KiB (proc(5), VmRSS).
func resident(pid int) (int, error) {
	file, err := os.Open(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0, err
	}
	defer file.Close()
	for lines := bufio.NewScanner(file); lines.Scan(); {
		if rest, found := strings.CutPrefix(lines.Text(), "VmRSS:"); found {
			return strconv.Atoi(strings.TrimSuffix(strings.TrimSpace(rest), " kB"))
		}
	}
	return 0, errors.New("no VmRSS: memory is measured on Linux only")
}

// descriptors is how many files and sockets a process holds open.
func descriptors(pid int) (int, error) {
	list, err := os.ReadDir(fmt.Sprintf("/proc/%d/fd", pid))
	return len(list), err
}

// certificate makes a certificate for this machine that lives as long as the bench.
func certificate(folder string) (certFile, keyFile string, err error) {
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		return "", "", err
	}
	about := &x509.Certificate{
		SerialNumber: big.NewInt(1), NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(24 * time.Hour),
		IPAddresses: []net.IP{net.IPv4(127, 0, 0, 1)}, KeyUsage: x509.KeyUsageDigitalSignature,
	}
	der, err := x509.CreateCertificate(rand.Reader, about, about, &key.PublicKey, key)
	if err != nil {
		return "", "", err
	}
	keyDER, err := x509.MarshalECPrivateKey(key)
	if err != nil {
		return "", "", err
	}
	certFile, keyFile = filepath.Join(folder, "cert.pem"), filepath.Join(folder, "key.pem")
	return certFile, keyFile, errors.Join(
		os.WriteFile(certFile, pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der}), 0o600),
		os.WriteFile(keyFile, pem.EncodeToMemory(&pem.Block{Type: "EC PRIVATE KEY", Bytes: keyDER}), 0o600),
	)
}
