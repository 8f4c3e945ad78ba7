package desk_test

import (
	"errors"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/desk"
)

// Two chiefs who demote each other at once: one of them stays.
func TestTheLastChiefStaysInARace(t *testing.T) {
	d, _, _ := opened(t)
	one := chief(t, d).Instructor
	for round := range 20 {
		code, _, err := d.Invite(one, quiz.RoleChief)
		require.NoError(t, err)
		in, err := d.Redeem(code, "Chief of round "+strconv.Itoa(round), phrase)
		require.NoError(t, err)
		two := in.Instructor
		faults := make([]error, 2)
		var both sync.WaitGroup
		both.Go(func() { _, faults[0] = d.Change(one, two.ID, quiz.RoleInstructor, false) })
		both.Go(func() { _, faults[1] = d.Change(two, one.ID, quiz.RoleInstructor, false) })
		both.Wait()
		require.Error(t, errors.Join(faults...), "round %d: nobody is left to lead", round)
		if faults[0] != nil {
			one = two
		}
	}
}

// A stranger's tries are counted without keeping what they typed.
func TestTriesKeepNoLongNames(t *testing.T) {
	d, _, _ := opened(t)
	chief(t, d)
	heap := func() uint64 {
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	before := heap()
	for n := range 40 {
		_, err := d.SignIn(strings.Repeat("x", 1<<20)+strconv.Itoa(n), phrase, desk.From{})
		require.ErrorIs(t, err, desk.ErrWrong)
	}
	assert.Less(t, heap(), before+8<<20, "40 MB were sent")
	runtime.KeepAlive(d)
}

func TestAQuotationMarkInTheFirstValueIsALine(t *testing.T) {
	_, err := desk.ReadCSV("call_sign,personnel\n\"Engine\" 1,7\n")
	require.Error(t, err)
	assert.Contains(t, err.Error(), "line 2")
}
