package wire

import (
	"unsafe"

	"lintel/engine"
	"lintel/quiz"
)

// Decode fills dst, a pointer to one of the types that cross to the engine, from
// tree. The error is an *engine.Problem with the path to the first fault.
func Decode(tree any, dst any) error {
	switch dst := dst.(type) {
	case *engine.Scenario:
		return engineScenario.read("", tree, unsafe.Pointer(dst))
	case *engine.Readings:
		return engineReadings.read("", tree, unsafe.Pointer(dst))
	case *engine.Move:
		return engineMove.read("", tree, unsafe.Pointer(dst))
	case *quiz.Answer:
		return quizAnswer.read("", tree, unsafe.Pointer(dst))
	case *quiz.Scene:
		return quizScene.read("", tree, unsafe.Pointer(dst))
	case *[]quiz.Attempt:
		return quizAttempt.readList("", tree, (*slice)(unsafe.Pointer(dst)))
	}
	panic("wire: no layout to read into: name the type in pwa/wasm/wire and wiregen")
}

// Encode turns what the engine answers into a plain tree. What is a plain tree
// already stays as it is.
func Encode(v any) any {
	switch v := v.(type) {
	case engine.Finding:
		return engineFinding.write(unsafe.Pointer(&v))
	case engine.Readings:
		return engineReadings.write(unsafe.Pointer(&v))
	case []engine.Event:
		return engineEvent.writeList((*slice)(unsafe.Pointer(&v)))
	case quiz.Item:
		return quizItem.write(unsafe.Pointer(&v))
	case quiz.Verdict:
		return quizVerdict.write(unsafe.Pointer(&v))
	case quiz.Progress:
		return quizProgress.write(unsafe.Pointer(&v))
	case quiz.Contrast:
		return quizContrast.write(unsafe.Pointer(&v))
	case []quiz.Scene:
		return quizScene.writeList((*slice)(unsafe.Pointer(&v)))
	case map[string]any, []any, string, bool, int, float64, nil:
		return v
	}
	panic("wire: no layout to write: name the type in pwa/wasm/wire and wiregen")
}
