package serve_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz/session"
)

// A laptop at the drill ground may set its clock back in the middle of a class: the
// class goes on, nothing committed is lost, and a start in that hour finds it.
func TestAClockThatJumpsBackHoldsNoClassUp(t *testing.T) {
	s := start(t)
	l := s.chief().opened(session.Led, 2)
	require.Equal(t, 200, l.join(1, "Engine 1").status)
	l.act(session.Started)
	l.step(session.Commit, "s1")
	require.Equal(t, 200, l.commit(1, "a", "s1", 3).status)
	s.wait(-time.Hour)
	require.Equal(t, 200, l.join(2, "Engine 2").status)
	require.Equal(t, 200, l.commit(2, "a", "s1", 2).status)
	l.step(session.Compare, "s1")
	l.step(session.Cutaway, "s1")
	l.step(session.Watch, "s2")
	l.step(session.Commit, "s2")
	require.Equal(t, 200, l.commit(1, "a", "s2", 3).status)
	state, err := s.Classes().State(l.ID)
	require.NoError(t, err)
	for _, scene := range []string{"s1", "s2"} {
		held, _ := state.MarkOf(scene, 1)
		assert.NotNil(t, held, scene)
	}
	require.NoError(t, s.Close())

	again := startWith(t, s.data, func(c *configuration) { c.Now = func() time.Time { return time.Now().Add(-time.Hour) } })
	after, err := again.Classes().State(l.ID)
	require.NoError(t, err)
	assert.Equal(t, state.Step, after.Step)
	assert.Len(t, after.People, 2)
	l.server = again
	assert.Equal(t, 200, l.join(3, "Engine 3").status, "and lets people in")
}
