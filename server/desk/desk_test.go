package desk_test

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/desk"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

var cheap = desk.Cost{KiB: 64, Passes: 1}

const phrase = "four words of my own"

// clock is a clock that a test sets.
type clock struct{ now time.Time }

func (c *clock) time() time.Time { return c.now }

func opened(t *testing.T) (*desk.Desk, *store.Store, *clock) {
	t.Helper()
	path := filepath.Join(t.TempDir(), store.FileName)
	s, err := store.Open(path, store.Options{})
	require.NoError(t, err)
	t.Cleanup(func() {
		require.NoError(t, s.Close())
		_, err := store.CheckFile(path)
		assert.NoError(t, err)
	})
	c := &clock{time.Unix(1_790_000_000, 0)}
	return desk.New(s, c.time, cheap), s, c
}

func chief(t *testing.T, d *desk.Desk) desk.SignedIn {
	t.Helper()
	code, err := d.SetUpCode()
	require.NoError(t, err)
	in, err := d.SetUp(code, "Chief 1", phrase)
	require.NoError(t, err)
	return in
}

// Codes are read out and typed: no character looks like another, and each of the
// 24 comes up as often. With 24,000 draws each is expected 1,000 times; five
// standard deviations are 155.
func TestCodesCanBeReadAndAreEven(t *testing.T) {
	seen := map[rune]int{}
	for range 2000 {
		for _, r := range desk.NewCode(12) {
			seen[r]++
		}
	}
	assert.Len(t, seen, 24)
	for _, alike := range "0O1IL2Z5S8BU" {
		assert.Zero(t, seen[alike], "%c", alike)
	}
	for r, n := range seen {
		assert.InDelta(t, 1000, n, 155, "%c", r)
	}
	code := desk.NewCode(16)
	assert.Equal(t, code, desk.Tidy(" "+strings.ToLower(desk.Spaced(code))+" "))
	assert.Len(t, desk.Spaced(code), 19)
}

func TestSignInsRunOut(t *testing.T) {
	d, _, c := opened(t)
	in := chief(t, d)
	who, err := d.WhoIs(in.Session)
	require.NoError(t, err)
	assert.Equal(t, quiz.RoleChief, who.Role)
	c.now = c.now.Add(15 * time.Hour)
	_, err = d.WhoIs(in.Session)
	require.ErrorIs(t, err, desk.ErrNobody)
	require.NoError(t, d.Sweep())
	_, err = d.WhoIs("")
	require.ErrorIs(t, err, desk.ErrNobody)

	again, err := d.SignIn("Chief 1", phrase, desk.From{Browser: in.Browser})
	require.NoError(t, err)
	assert.Equal(t, in.Browser, again.Browser, "the browser is known still")
	require.NoError(t, d.SignOut(again.Session))
	_, err = d.WhoIs(again.Session)
	require.ErrorIs(t, err, desk.ErrNobody)
	require.NoError(t, d.SignOut(again.Session), "twice is once")
}

// Neither a secret nor a pass phrase is in the file in any form it could be used.
func TestNoSecretIsKeptAsItIs(t *testing.T) {
	d, s, _ := opened(t)
	in := chief(t, d)
	code, _, err := d.Invite(in.Instructor, quiz.RoleInstructor)
	require.NoError(t, err)
	var all strings.Builder
	for _, kind := range quiz.DocKinds {
		docs, err := s.Docs(kind, "", 100)
		require.NoError(t, err)
		for _, doc := range docs {
			all.WriteString(doc.ID + string(doc.Body))
		}
	}
	for _, secret := range []string{in.Session, in.Browser, phrase, desk.Tidy(code)} {
		assert.NotContains(t, all.String(), secret)
	}
	assert.Contains(t, all.String(), "$argon2id$v=19$m=64,t=1,p=1$")
}

func TestOldPhrasesFitAfterTheCostIsRaised(t *testing.T) {
	d, s, c := opened(t)
	chief(t, d)
	dearer := desk.New(s, c.time, desk.Cost{KiB: 128, Passes: 2})
	_, err := dearer.SignIn("Chief 1", phrase, desk.From{Own: true})
	require.NoError(t, err)
	_, err = dearer.SignIn("Chief 1", phrase+"!", desk.From{Own: true})
	require.ErrorIs(t, err, desk.ErrWrong)
}

func TestANewPhraseEndsEveryOtherSignIn(t *testing.T) {
	d, _, _ := opened(t)
	first := chief(t, d)
	second, err := d.SignIn("Chief 1", phrase, desk.From{Own: true})
	require.NoError(t, err)
	_, err = d.ChangePhrase(first.Instructor, first.Browser, "not the old one at all", "another phrase of mine")
	require.ErrorIs(t, err, desk.ErrWrong)
	_, err = d.ChangePhrase(first.Instructor, first.Browser, phrase, "short")
	require.ErrorContains(t, err, "new has 5 characters")
	third, err := d.ChangePhrase(first.Instructor, first.Browser, phrase, "another phrase of mine")
	require.NoError(t, err)
	for _, old := range []string{first.Session, second.Session} {
		_, err = d.WhoIs(old)
		require.ErrorIs(t, err, desk.ErrNobody)
	}
	_, err = d.WhoIs(third.Session)
	require.NoError(t, err)
}

// Two people who share a phone keep their histories apart; a phone that passes
// from one person to another starts the second one's at that point.
func TestWhoseHistoryItIs(t *testing.T) {
	d, s, _ := opened(t)
	boss := chief(t, d).Instructor
	roster, err := d.SaveRoster(boss, "", "B shift", []desk.NewSeat{{CallSign: "E1"}, {CallSign: "E2"}})
	require.NoError(t, err)
	claim := func(seat int, device int, place string) {
		token, _, err := d.ClaimCode(boss, roster.ID, roster.Seats[seat].ID)
		require.NoError(t, err)
		_, err = d.Claim(storetest.ID(device), token, place)
		require.NoError(t, err)
	}
	work := func(device int, seq uint64, place string) {
		events := storetest.Answers(device, seq, seq)
		events[0].Body = quiz.Raw(`{"answer":{},"class":{"id":"x","scene":"s1","place":"` + place + `"}}`)
		_, err := s.Append(storetest.ID(device), events)
		require.NoError(t, err)
	}
	history := func(seat int) (seqs []uint64) {
		records, _, err := d.SeatRecords(roster.ID, roster.Seats[seat].ID, "", 100)
		require.NoError(t, err)
		for _, r := range records {
			seqs = append(seqs, r.Seq)
		}
		return seqs
	}
	_, err = s.Register(storetest.ID(1), storetest.Secret(1), "phone")
	require.NoError(t, err)
	claim(0, 1, "a")
	claim(1, 1, "b")
	for seq, place := range []string{"a", "b", "a", "b"} {
		work(1, uint64(seq+1), place)
	}
	assert.Equal(t, []uint64{1, 3}, history(0))
	assert.Equal(t, []uint64{2, 4}, history(1))

	claim(1, 1, "a") // the second person takes the phone over
	work(1, 5, "a")
	assert.Equal(t, []uint64{1, 3}, history(0), "the first one's ends there")
	assert.Equal(t, []uint64{2, 4, 5}, history(1), "the second one's goes on")
	seats, err := d.SeatsOf(storetest.ID(1))
	require.NoError(t, err)
	require.Len(t, seats, 1)
	assert.Equal(t, "E2", seats[0].CallSign)
	_, err = d.Claim(storetest.ID(1), "00", "c")
	require.ErrorContains(t, err, "use a or b")
	_, err = d.Claim(storetest.ID(1), "00", "a")
	require.ErrorIs(t, err, desk.ErrWrongCode)
}
