// Package engine is Lintel's vocabulary: the nouns that every other package
// speaks, and the file shapes (scenario, readings, finding, series) that are a
// contract with the outside. It holds no physics, no rule and no score, and it
// imports none of its own sub-packages.
//
// Units at every edge are SI and degrees Celsius, and each field name ends in
// its unit. Inside engine/zone temperatures are in kelvin.
//
// Nothing below engine, quiz or content may import fmt, encoding/json or
// reflect (engine/shape alone uses reflect, and stays off the phone, which has
// pwa/wasm/wire): the same code runs there as WebAssembly, where those packages
// would double the download.
package engine

// Version names the physics, rules and scoring together. Items, answers and
// classes carry it; a verdict is only ever recomputed by the same version.
const Version = "0.4.3"
