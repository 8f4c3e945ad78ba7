/**
 * Random bytes as lower-case hex. crypto.getRandomValues is there on plain http
 * too, where crypto.randomUUID and crypto.subtle are not.
 */
export function randomHex(bytes: number): string {
  const raw = crypto.getRandomValues(new Uint8Array(bytes))
  return Array.from(raw, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

/**
 * A seed for a drill: 0 to 2^52 - 1. Seeds from there on are kept for test forms
 * (quiz.FirstTestSeed), so that no scene of a test was ever drilled.
 */
export function randomSeed(): number {
  const [high = 0, low = 0] = crypto.getRandomValues(new Uint32Array(2))
  return (high >>> 12) * 2 ** 32 + low
}

/** A whole number from 0 to n - 1. The bias of the remainder is below n / 2^52. */
export function randomBelow(n: number): number {
  return randomSeed() % n
}
