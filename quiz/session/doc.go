// Package session is a class as a pure state machine: a group of people who work
// on the same scenes under an instructor. A class is the list of its log's
// entries and nothing else; Apply takes a state and one entry to the next state,
// and the views are functions of a state. There is no clock, no socket and no
// store in here: times come with the entries, and who is connected is not the
// log's business.
//
// A state is never changed once it is made. Apply shares what stays the same, so
// that a class of thousands costs little an entry, and an old state may be read
// while a new one is made.
package session
