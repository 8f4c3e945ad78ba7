package engine

// AppendTo writes a frame as plain numbers onto out, in field order: the
// header, each compartment, each opening. It allocates only where out is too
// short, so a caller that reuses its slice pays nothing.
func (f *Frame) AppendTo(out []float64) []float64 {
	out = f.Header.appendTo(out)
	for i := range f.Compartments {
		out = f.Compartments[i].appendTo(out)
	}
	for i := range f.Openings {
		out = f.Openings[i].appendTo(out)
	}
	return out
}

// Length is how many numbers AppendTo writes.
func (f *Frame) Length() int {
	return FrameHeaderLength + len(f.Compartments)*CompartmentFrameLength + len(f.Openings)*OpeningFrameLength
}

// How many numbers each part of a frame holds.
const (
	FrameHeaderLength      = 6
	CompartmentFrameLength = 12
	OpeningFrameLength     = 23
)

func (h *FrameHeader) appendTo(out []float64) []float64 {
	return append(out, h.TS, h.HRRKW, h.Stage, h.Regime, h.WindMS, h.Events)
}

func (c *CompartmentFrame) appendTo(out []float64) []float64 {
	return append(out,
		c.UpperC, c.LowerC, c.InterfaceM, c.O2Upper, c.O2Lower, c.FuelGasUpper,
		c.COUpper, c.SootUpper, c.AerosolUpper, c.HRRKW, c.PressurePa, c.FloorFluxKW)
}

func (o *OpeningFrame) appendTo(out []float64) []float64 {
	return append(out,
		o.Open, o.InKgS, o.OutKgS, o.NeutralM, o.TopVelocityMS, o.OutVelocityMS,
		o.InVelocityMS, o.OutTempC, o.ExtinctionM, o.OpticalDepth, o.Lightness, o.Tint,
		o.Steam, o.Churning, o.Pulsing, o.FlameKW, o.Flow, o.NeutralPlane,
		o.Volume, o.Velocity, o.Density, o.Darkness, o.Colour)
}
