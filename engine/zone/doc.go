// Package zone is the fire: rooms of two well-mixed layers of gas joined by
// openings, stepped at a fixed time step.
//
// # Formulation
//
// All gas has one molar mass (that of air), its heat capacity rises with temperature
// and with water vapour (enthalpy.go), and the pressure differs from that of the
// atmosphere by so little that density times temperature is one constant. The volume
// of a layer is then its mass times its temperature over that constant, and because
// the layers of a room fill it, their sum cannot change: the volume that inflow and
// burning make, less what losses take, must leave through the openings. That balance,
// one equation a room, gives the pressures. It is solved by a damped Newton method
// with the exact derivative of the flow through every opening; no pressure is ever
// stepped in time (a pressure equation would need steps of a few hundred-thousandths
// of a second).
//
// A step: (1) heat and fuel gas released, from the state at its start; (2) the
// pressures; (3) the flows, what they entrain and which layer they join; (4) the
// layers, by one explicit Euler step. Every kilogram and joule is moved from one
// account to another, so mass, species and enthalpy balance to rounding; see
// Books.
//
// # Limits
//
// Two layers a room: no corridors longer than a few widths, no fire spread in a
// plane, no momentum of the gas in a room. Upper-layer temperature and depth of
// mature zone models scatter by 35 and 19 per cent against experiments
// (firemodels/cfast, validation scatter table); this one is not better than its
// own report says (server/validate/testdata/report.md).
//
// # Sources
//
// Each correlation names its own. "CFAST Tech. Ref." is NIST TN 1889v1, "CFAST,
// Technical Reference Guide"; constants marked "chosen by us" have no other
// source and were set by reason or by the fit named beside them.
package zone
