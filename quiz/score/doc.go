// Package score judges an answer against the truth of its item. It is pure: the
// same item, truth and answer give the same verdict on a phone and on a server.
//
// Levels are scored by how many steps they are off, never as merely right or
// wrong, and which way: reading too light and reading too heavy are different
// faults. A call is right when it is one of those the truth accepts, and half
// wrong when it is next to one. Confidence is scored by the Brier score, which
// no one can better by saying anything but what they believe.
//
// "Cannot tell" costs what a blind guess would cost on average, so that it is
// worth saying exactly when one has nothing to go by.
package score
