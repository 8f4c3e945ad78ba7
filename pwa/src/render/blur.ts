// What passes one spot quicker than the eye follows it blurs, as through a
// low-pass: half is left of seven a second, a tenth of twenty. So neither the lumps
// of smoke nor the ripples of its lower boundary flash (WCAG 2.2, SC 2.3.1, counted
// over every family). Chosen by us.
const HALF_LEFT_PER_S = 7

/** How much is left of what passes a spot so many times a second, 0 to 1. */
export const sharp = (perSecond: number): number => 1 / (1 + (perSecond * perSecond) / (HALF_LEFT_PER_S * HALF_LEFT_PER_S))
