// Package handcalc holds the hand correlations of fire engineering: layer
// temperature and filling, plumes, flames, ceiling jets, radiation, flashover,
// smoke, vent flow and scaling.
//
// Each says its formula, units, valid range and source, and each published
// worked example that was found stands beside it as an Example function and as a
// row of testdata/handcalc. They are for checking the fire model and for
// teaching; the model itself solves the equations these were fitted to.
//
// Heat release is in kW and conductivity in kW/m/K, as the sources print them.
// A correlation used outside its range answers with an error.
package handcalc
