/** Half of what either name below the line takes, with the space beside it. Chosen by us, for the longer of both languages. */
const HALF = 26

/** Where the names of two marks are centred that stand at x, so that neither runs into the other or out of the picture. */
export function namesApart(shows: number | undefined, event: number | undefined, width: number): { shows?: number; event?: number } {
  const within = (x: number, margin: number) => Math.min(width - margin, Math.max(margin, x))
  if (shows === undefined || event === undefined) {
    return { ...(shows !== undefined && { shows: within(shows, HALF) }), ...(event !== undefined && { event: within(event, HALF) }) }
  }
  const [left, right] = [within(shows, HALF), within(event, HALF)]
  if (right - left >= 2 * HALF) return { shows: left, event: right }
  const between = within((left + right) / 2, 2 * HALF)
  return { shows: between - HALF, event: between + HALF }
}
