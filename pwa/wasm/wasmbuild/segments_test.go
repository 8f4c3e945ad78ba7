package wasmbuild

import (
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// memory is what lies in memory when the program starts.
func memory(t *testing.T, list []segment) []byte {
	t.Helper()
	var all []byte
	for _, s := range list {
		if need := s.at + len(s.data); need > len(all) {
			all = append(all, make([]byte, need-len(all))...)
		}
		copy(all[s.at:], s.data)
	}
	return all
}

// scattered is a list of segments with gaps of zero to a thousand bytes between them,
// in no order.
func scattered(rng *rand.Rand) []segment {
	var list []segment
	at := rng.IntN(5000)
	for range 1 + rng.IntN(60) {
		s := segment{at, make([]byte, 1+rng.IntN(300))}
		for i := range s.data {
			s.data[i] = byte(rng.IntN(256))
		}
		list = append(list, s)
		at += len(s.data) + rng.IntN(1000)
	}
	rng.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	return list
}

func TestJoinedSegmentsHoldTheSameMemory(t *testing.T) {
	for seed := range uint64(500) {
		list := scattered(rand.New(rand.NewPCG(seed, 1)))
		joined, err := join(list)
		require.NoError(t, err)
		again, err := segmentsOf(written(joined))
		require.NoError(t, err)
		require.Equal(t, joined, again, "written and read")
		require.Equal(t, memory(t, list), memory(t, again), "seed %d", seed)
		for i := 1; i < len(again); i++ {
			assert.Greater(t, again[i].at-again[i-1].at-len(again[i-1].data), widestGap)
		}
		joined[0].data[0]++
		require.NotEqual(t, memory(t, list), memory(t, joined), "one byte that differs is seen")
	}
}

// What Go's linker writes is read whole: of a real program the data are joined, all
// other sections stand as they were, and memory is the same.
func TestAProgramOfTheLinkerIsJoined(t *testing.T) {
	folder := t.TempDir()
	source, path := filepath.Join(folder, "main.go"), filepath.Join(folder, "main.wasm")
	require.NoError(t, os.WriteFile(source, []byte("package main\n\nfunc main() {}\n"), 0o600))
	build := exec.Command("go", "build", "-o", path, source)
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	output, err := build.CombinedOutput()
	require.NoError(t, err, string(output))
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, joinSegmentsOf(path))
	after, err := os.ReadFile(path)
	require.NoError(t, err)

	old, young := sections(t, before), sections(t, after)
	wide, err := segmentsOf(old[dataSection])
	require.NoError(t, err)
	joined, err := segmentsOf(young[dataSection])
	require.NoError(t, err)
	t.Logf("%d segments, %d joined", len(wide), len(joined))
	assert.Less(t, len(joined), len(wide)/50)
	assert.Equal(t, memory(t, wide), memory(t, joined))
	delete(old, dataSection)
	delete(young, dataSection)
	assert.Equal(t, old, young)
}

// sections are the bodies of a module's sections, the last of each kind.
func sections(t *testing.T, module []byte) map[byte][]byte {
	t.Helper()
	all, rest := map[byte][]byte{}, reader{module[headerLength:]}
	for len(rest.left) > 0 {
		kind, _ := rest.byte()
		length, known := rest.unsigned()
		require.True(t, known)
		all[kind] = rest.take(length)
	}
	return all
}

func TestWhatIsNoModuleIsRefused(t *testing.T) {
	header := "\x00asm\x01\x00\x00\x00"
	for name, module := range map[string]string{
		"nothing":                "",
		"a section cut short":    header + "\x0b\x10\x00",
		"a passive segment":      header + "\x0b\x04\x01\x01\x01A",
		"a place not constant":   header + "\x0b\x07\x01\x00\x23\x00\x0b\x01A",
		"bytes left over":        header + "\x0b\x08\x01\x00\x41\x00\x0b\x01AB",
		"one upon another":       header + "\x0b\x0e\x02\x00\x41\x00\x0b\x02AB\x00\x41\x01\x0b\x01C",
		"a segment cut short":    header + "\x0b\x06\x01\x00\x41\x00\x0b\x09",
		"a place before nothing": header + "\x0b\x07\x01\x00\x41\x7f\x0b\x01A",
	} {
		_, err := joinSegments([]byte(module))
		assert.ErrorIs(t, err, errShape, name)
	}
	sound := []byte(header + "\x0b\x07\x01\x00\x41\x08\x0b\x01A")
	joined, err := joinSegments(sound)
	require.NoError(t, err)
	assert.Equal(t, sound, joined)
}

func TestSignedNumbers(t *testing.T) {
	for _, n := range []int{0, 1, 63, 64, 127, 128, 8191, 8192, 1 << 20, 1<<31 - 1, -1, -64, -65, -1 << 31} {
		r := reader{appendSigned(nil, n)}
		read, ok := r.signed()
		assert.True(t, ok)
		assert.Equal(t, n, read)
		assert.Empty(t, r.left)
	}
	_, ok := (&reader{[]byte{0x80}}).signed()
	assert.False(t, ok, "cut short")
}
