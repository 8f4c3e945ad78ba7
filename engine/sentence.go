package engine

import "strings"

// A Sentence is what the engine has to say, as a key: the id of a sentence in the
// catalogue, and what goes into its slots. Content and the phone hold the words, in
// each language, so none travels with the engine and none is glued together.
//
// Where ids are parted by "?" the first that the catalogue has is taken. A value of
// a slot stands for itself, or after "@" for another sentence's words; those of
// degrees/N (C), litres/N and number/N are N as a page writes it.
//
//	before/was|s=60|at=@opening/door,@opening/window|how=@was/faster
func Sentence(id string, slots ...string) string {
	for _, slot := range slots {
		id += "|" + slot
	}
	return id
}

// Slot fills one slot of a sentence with a value, or with a list of them.
func Slot(name string, values ...string) string { return name + "=" + strings.Join(values, ",") }

// Word is a value of a slot that stands for the words of id.
func Word(id string) string { return "@" + id }

// Sentences joins what is said one after another.
func Sentences(list ...string) string {
	var said []string
	for _, one := range list {
		if one != "" {
			said = append(said, one)
		}
	}
	return strings.Join(said, "\n")
}
