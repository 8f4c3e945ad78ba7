package desk_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/desk"
	"lintel/server/store"
)

// Who was taken off a roster, or had a number taken away, leaves the store's file as
// one does who was erased. Control: of a roster that only changes its title nothing is
// to leave.
func TestWhoIsTakenOffARosterLeavesTheFile(t *testing.T) {
	const gone = "GONE-5f1e9a"
	number, none := gone, ""
	for name, c := range map[string]struct {
		title   string
		keep    int
		number  *string
		leaving bool
	}{
		"a seat":   {"B shift", 1, nil, true},
		"a number": {"B shift", 2, &none, true},
		"nobody":   {"C shift", 2, nil, false},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), store.FileName)
			s, err := store.Open(path, store.Options{})
			require.NoError(t, err)
			d := desk.New(s, time.Now, cheap)
			made, err := d.SaveRoster(quiz.Instructor{}, "", "B shift", []desk.NewSeat{{CallSign: "Godwit"}, {CallSign: "Knot", Personnel: &number}})
			require.NoError(t, err)
			seats := []desk.NewSeat{{ID: made.Seats[0].ID, CallSign: "Godwit"}, {ID: made.Seats[1].ID, CallSign: "Knot", Personnel: c.number}}
			_, err = d.SaveRoster(quiz.Instructor{}, made.ID, c.title, seats[:c.keep])
			require.NoError(t, err)
			require.NoError(t, s.Close())
			done, err := store.CompactErased(path)
			require.NoError(t, err)
			assert.Equal(t, c.leaving, done)
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			assert.Equal(t, !c.leaving, bytes.Contains(text, []byte(gone)))
		})
	}
}
