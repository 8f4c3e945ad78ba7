// Command barehub is the control of the class figures: gorilla/websocket on
// net/http and nothing else. It keeps who is connected, and sends the same bytes
// to all of them when asked, once they are durable in bbolt (a class does no less).
// Answers it puts there through bbolt's own Batch.
package main

import (
	"crypto/rand"
	"crypto/tls"
	"flag"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"strconv"
	"strings"
	"sync"
	"time"

	"github.com/gorilla/websocket"
	"go.etcd.io/bbolt"
)

type hub struct {
	mu    sync.Mutex
	conns map[chan *websocket.PreparedMessage]bool
	db    *bbolt.DB
}

func main() {
	cert, key := flag.String("tls-cert", "", "certificate"), flag.String("tls-key", "", "its key")
	data := flag.String("db", "", "file for answers")
	flag.Parse()
	h := &hub{conns: map[chan *websocket.PreparedMessage]bool{}}
	if *data != "" {
		db, err := bbolt.Open(*data, 0o600, nil)
		if err != nil {
			log.Fatal(err)
		}
		// Tuned: an answer waits at most 2 ms for company.
		db.MaxBatchDelay, db.MaxBatchSize = 2*time.Millisecond, 200
		h.db = db
	}
	http.HandleFunc("/live", h.live)
	http.HandleFunc("/send", h.send)
	http.HandleFunc("/answer", h.answer)
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		log.Fatal(err)
	}
	scheme := "http"
	if *cert != "" {
		pair, err := tls.LoadX509KeyPair(*cert, *key)
		if err != nil {
			log.Fatal(err)
		}
		scheme = "https"
		listener = tls.NewListener(listener, &tls.Config{Certificates: []tls.Certificate{pair}, MinVersion: tls.VersionTLS12, NextProtos: []string{"http/1.1"}})
	}
	fmt.Printf("at %s://%s/\n", scheme, listener.Addr())
	log.Fatal(http.Serve(listener, nil))
}

// Small buffers and a shared pool for writing, as anyone would set them who
// counts memory.
var upgrader = websocket.Upgrader{ReadBufferSize: 1024, WriteBufferSize: 1024, WriteBufferPool: &sync.Pool{}}

func (h *hub) live(w http.ResponseWriter, r *http.Request) {
	ws, err := upgrader.Upgrade(w, r, nil)
	if err != nil {
		return
	}
	queue := make(chan *websocket.PreparedMessage, 32)
	h.mu.Lock()
	h.conns[queue] = true
	h.mu.Unlock()
	go func() {
		for message := range queue {
			if ws.WritePreparedMessage(message) != nil {
				break
			}
		}
		ws.Close()
	}()
	for {
		if _, _, err := ws.ReadMessage(); err != nil {
			break
		}
	}
	h.mu.Lock()
	delete(h.conns, queue)
	h.mu.Unlock()
	close(queue)
}

// send gives everyone a frame of so many bytes that says its seq.
func (h *hub) send(w http.ResponseWriter, r *http.Request) {
	size, _ := strconv.Atoi(r.FormValue("bytes"))
	text := `{"kind":"view","seq":` + r.FormValue("seq") + `,"pad":"`
	text += strings.Repeat("x", max(0, size-len(text)-2)) + `"}`
	message, err := websocket.NewPreparedMessage(websocket.TextMessage, []byte(text))
	if err == nil && h.db != nil {
		err = h.db.Update(func(tx *bbolt.Tx) error { return keep(tx, r.FormValue("seq"), []byte(text)) })
	}
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	for queue := range h.conns {
		select {
		case queue <- message:
		default: // slow: a real hub would drop it
		}
	}
}

// answer keeps a body under a random key before it replies.
func (h *hub) answer(w http.ResponseWriter, r *http.Request) {
	body, err := io.ReadAll(r.Body)
	if err == nil {
		err = h.db.Batch(func(tx *bbolt.Tx) error { return keep(tx, rand.Text(), body) })
	}
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
	}
}

func keep(tx *bbolt.Tx, key string, text []byte) error {
	bucket, err := tx.CreateBucketIfNotExists([]byte("kept"))
	if err != nil {
		return err
	}
	return bucket.Put([]byte(key), text)
}
