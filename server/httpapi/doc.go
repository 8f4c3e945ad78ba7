// Package httpapi is what a browser meets: the web app's files, the API that
// keeps a device's events, and the door to the live sockets.
//
// A path that is not listed in routes does not exist. Every answer carries the
// security headers of headers.go; every error is one JSON object
// {"error":{"where","what","do"}} with a status from the table in problem.go,
// and the text of an internal error goes to the log only.
//
// fiber's strings live as long as the request: what outlives it is copied here,
// at the boundary.
package httpapi
