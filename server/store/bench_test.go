package store_test

import (
	"fmt"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	bolt "go.etcd.io/bbolt"

	"lintel/server/store"
	"lintel/server/store/storetest"
)

// body is an answer of usual size: 2 kB.
const body = 2048

// BenchmarkDurableAnswers has writers send one answer each at a time, each
// waiting for the acknowledgement of the one before, through the store and,
// as a control, through bbolt's own Batch (default settings and the pair that
// was best when measured: 2 ms and as many as there are writers), which writes
// one bare row and checks nothing. It prints answers per second and the wait
// for an acknowledgement.
//
//	go test -run xxx -bench Durable -benchtime 2000x ./server/store
func BenchmarkDurableAnswers(b *testing.B) {
	for _, writers := range []int{1, 30, 200} {
		b.Run(fmt.Sprintf("store/%d", writers), func(b *testing.B) {
			s, err := store.Open(filepath.Join(b.TempDir(), store.FileName), store.Options{})
			require.NoError(b, err)
			defer s.Close()
			for n := range writers {
				_, err := s.Register(storetest.ID(n), storetest.Secret(n), "Engine")
				require.NoError(b, err)
			}
			padded := []byte(fmt.Sprintf(`{"pad":"%0*d"}`, body, 0))
			race(b, writers, func(n int, seq uint64) error {
				events := storetest.Answers(n, seq, seq)
				events[0].Body = padded
				_, err := s.Append(storetest.ID(n), events)
				return err
			})
		})
		b.Run(fmt.Sprintf("batch/%d", writers), func(b *testing.B) { batch(b, writers, 0, 0) })
		b.Run(fmt.Sprintf("batch tuned/%d", writers), func(b *testing.B) { batch(b, writers, 2*time.Millisecond, writers) })
	}
}

func batch(b *testing.B, writers int, delay time.Duration, size int) {
	db, err := bolt.Open(filepath.Join(b.TempDir(), "bare.db"), 0o600, nil)
	require.NoError(b, err)
	defer db.Close()
	if size != 0 {
		db.MaxBatchDelay, db.MaxBatchSize = delay, size
	}
	name := []byte("rows")
	require.NoError(b, db.Update(func(tx *bolt.Tx) error { _, err := tx.CreateBucket(name); return err }))
	row := make([]byte, body+200)
	race(b, writers, func(n int, seq uint64) error {
		return db.Batch(func(tx *bolt.Tx) error { return tx.Bucket(name).Put(fmt.Appendf(nil, "%08d%08d", n, seq), row) })
	})
}

// race shares b.N writes among writers and reports rate and waits.
func race(b *testing.B, writers int, write func(n int, seq uint64) error) {
	each := max(1, b.N/writers)
	waits := make([][]time.Duration, writers)
	var all sync.WaitGroup
	b.ResetTimer()
	began := time.Now()
	for n := range writers {
		all.Go(func() {
			for seq := uint64(1); seq <= uint64(each); seq++ {
				start := time.Now()
				if err := write(n, seq); err != nil {
					b.Error(err)
					return
				}
				waits[n] = append(waits[n], time.Since(start))
			}
		})
	}
	all.Wait()
	took := time.Since(began)
	b.StopTimer()
	flat := slices.Concat(waits...)
	slices.Sort(flat)
	b.ReportMetric(float64(len(flat))/took.Seconds(), "answers/s")
	b.ReportMetric(float64(flat[len(flat)/2].Microseconds())/1000, "p50_ms")
	b.ReportMetric(float64(flat[len(flat)*99/100].Microseconds())/1000, "p99_ms")
}
