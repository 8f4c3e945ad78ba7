package optics

// band is a wavelength at which the mixture is worked out.
type band int

// Blue and red tell the tint; green is where the eye is keenest; red is also
// the laser line at which smoke is measured, so extinction is given there.
const (
	blue  band = iota // 450 nm
	green             // 550 nm
	red               // 633 nm
	bands
)

// particle is one kind of smoke: mass-specific extinction in m²/kg and albedo
// (the share of it that is scattered) at each band, and the mean cosine of the
// scattering angle.
type particle struct {
	extinction [bands]float64
	albedo     [bands]float64
	forward    float64
}

// soot is black carbon from flame.
//
// Extinction 8.7 m²/g at 633 nm, ±1.1: Mulholland and Croarkin, Fire and
// Materials 24 (2000) 227, over seven studies and 29 fuels. Shorter waves by the
// power 1.1 (1.0 to 1.2) and albedo 0.25 (0.15 to 0.30): Bond and Bergstrom,
// Aerosol Science and Technology 40 (2006) 27, both seen in a secondary note.
// The power is worked out once: (633/450)^1.1 and (633/550)^1.1. Together they
// give 7.6 m²/g absorbed at 550 nm, where Bond and Bergstrom print 7.5 ± 1.2.
// Forward cosine 0.6: from memory, to be confirmed.
var soot = particle{
	extinction: [bands]float64{8700 * 1.45549, 8700 * 1.16720, 8700},
	albedo:     [bands]float64{0.25, 0.25, 0.25},
	forward:    0.6,
}

// tar is the pale droplets of pyrolysis and smouldering: organic droplets by a
// Mie calculation over the sizes of Reid et al., Atmospheric Chemistry and
// Physics 5 (2005) 827 (seen in a secondary note). They take more of blue light
// than of red, which is the brown tint. Forward cosine 0.6: from memory, to be
// confirmed.
var tar = particle{
	extinction: [bands]float64{6050, 4310, 3300},
	albedo:     [bands]float64{0.940, 0.976, 0.974},
	forward:    0.6,
}

// water is the droplets of steam and cold-day vapour. Drops far larger than the
// wavelength shade twice their own disc: 3/(2·ρ·r), r = 5 µm (chosen by us),
// ρ = 1000 kg/m³. They absorb no visible light. Forward cosine 0.85: from
// memory, to be confirmed.
var water = particle{
	extinction: [bands]float64{300, 300, 300},
	albedo:     [bands]float64{1, 1, 1},
	forward:    0.85,
}
