package live_test

import (
	"testing"
	"time"

	"github.com/gorilla/websocket"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz/session"
	"lintel/server/live"
)

// patient gives a socket that says nothing more time than a test takes, so that
// what ends it is not the clock.
func patient(waiting int) live.Limits {
	limits := quick
	limits.Waiting, limits.Hello = waiting, time.Minute
	limits.Ping, limits.Silence = time.Second, 10*time.Second
	return limits
}

func patientRooms(waiting int) live.RoomLimits {
	limits := quickRooms
	limits.Limits = patient(waiting)
	return limits
}

// flood opens sockets that never say who they are.
func flood(t *testing.T, url string, sockets int) {
	t.Helper()
	for range sockets {
		connect(t, url)
	}
}

const planted = 60

// Sockets that never prove a device take no place from one that does, and are
// held to their own few: the last to come in passes through one of those. Control:
// with room for all of them, all of them stay.
func TestSilentSocketsTakeNoPlace(t *testing.T) {
	for waiting, left := range map[int]int{8: 7, 2 * planted: planted} {
		limits := patient(waiting)
		limits.Sockets = 2
		hub, url := start(t, limits)
		first := join(t, url, "device-a")
		flood(t, url, planted)
		holds := func(sockets int) {
			t.Helper()
			require.Eventually(t, func() bool { return hub.Count() == sockets }, 5*time.Second, 5*time.Millisecond, "%d of %d were planted", sockets, planted)
		}
		holds(1 + min(waiting, planted))
		join(t, url, "device-b")
		holds(2 + left)
		hub.Acked("device-a", 8)
		assert.JSONEq(t, `{"kind":"acked","seq":8}`, next(t, first), "who was there before still is")
	}
}

// settled waits until no socket comes or goes, and returns how many there are.
func settled(rooms *live.Rooms) int {
	held := rooms.Count()
	for quietFor := 0; quietFor < 10; {
		time.Sleep(20 * time.Millisecond)
		if now := rooms.Count(); now != held {
			held, quietFor = now, 0
			continue
		}
		quietFor++
	}
	return held
}

// slowly is a phone on a poor line: its hello comes only after others have opened
// sockets without one. It says whether the phone got in.
func slowly(t *testing.T, rooms *live.Rooms, url string, meanwhile func()) bool {
	t.Helper()
	before := settled(rooms)
	ws := connect(t, url)
	require.Eventually(t, func() bool { return rooms.Count() == before+1 }, 5*time.Second, time.Millisecond)
	meanwhile()
	settled(rooms)
	if ws.WriteJSON(hello("slow")) != nil {
		return false
	}
	var frame session.Frame
	_ = ws.SetReadDeadline(time.Now().Add(5 * time.Second))
	return ws.ReadJSON(&frame) == nil && frame.Kind == session.ViewFrame
}

// A flood upon one class, or upon none, cuts no phone of another that is about to
// say hello. Control: a flood upon the phone's own class does, since there it is
// the oldest that waits; once the flood is over it comes back.
func TestAFloodReachesOneClassOnly(t *testing.T) {
	limits := patientRooms(8)
	rooms, url := startRooms(t, newLesson(t, 1), limits)
	assert.True(t, slowly(t, rooms, url, func() { flood(t, url+"?nowhere", planted) }), "a flood elsewhere")
	assert.False(t, slowly(t, rooms, url, func() { flood(t, url, planted) }), "a flood upon the same class")
	back := watch(t, url, hello("slow"))
	assert.NotEmpty(t, back.quiet(), "afterwards, with the silent ones still there")
}

// While the flood goes on, phones that say hello at once get in.
func TestPhonesJoinThroughAFlood(t *testing.T) {
	rooms, url := startRooms(t, newLesson(t, 1), patientRooms(32))
	stop, stopped := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(stopped)
		for {
			select {
			case <-stop:
				return
			default:
			}
			if ws, _, err := dialer.Dial(url, nil); err == nil {
				defer ws.Close()
			}
		}
	}()
	for n := range 20 {
		phone := watch(t, url, hello(string(rune('a'+n))))
		select {
		case f := <-phone.frames:
			assert.Equal(t, session.ViewFrame, f.Kind)
		case err := <-phone.end:
			t.Errorf("phone %d was let go: %v", n, err)
		}
	}
	assert.Equal(t, 20, rooms.Connected("c"))
	close(stop)
	<-stopped
}

// Projectors open without a sign-in, so they are few.
func TestProjectorsAreFew(t *testing.T) {
	limits := patientRooms(8)
	limits.Walls = 2
	_, url := startRooms(t, newLesson(t, 1), limits)
	for range limits.Walls {
		wall := watch(t, url, session.Hello{Role: session.Projector})
		require.NotEmpty(t, wall.quiet())
	}
	third := watch(t, url, session.Hello{Role: session.Projector})
	var closed *websocket.CloseError
	require.ErrorAs(t, <-third.end, &closed)
	assert.Equal(t, websocket.CloseTryAgainLater, closed.Code)
	require.NotEmpty(t, watch(t, url, hello("phone")).quiet(), "phones come in as before")
}
