// Notes, in a page, how long after each tap its next picture was shown: what the
// browser itself says of each event (Event Timing, W3C), from the moment the
// screen was touched to the moment the next frame was presented.

/** To run in a page before anything else. */
export function noteTaps() {
  globalThis.lintelTaps = []
  const taps = new Map() // of one tap, the slowest of its events counts
  new PerformanceObserver((list) => {
    for (const { interactionId, duration, name, processingStart, startTime } of list.getEntries()) {
      if (!interactionId) continue
      const known = taps.get(interactionId)
      if (known === undefined) globalThis.lintelTaps.push(taps.set(interactionId, { ms: 0 }).get(interactionId))
      const tap = taps.get(interactionId)
      if (duration <= tap.ms) continue
      Object.assign(tap, { ms: duration, name, waited: processingStart - startTime })
    }
  }).observe({ type: 'event', durationThreshold: 16, buffered: true })
  // Quicker ones than the browser tells of are counted, not lost.
  globalThis.lintelClicks = 0
  addEventListener('click', () => { globalThis.lintelClicks++ }, { capture: true })
}

/** What was noted in a page: one number a tap in ms; a tap quicker than the browser tells of counts as the least it does. */
export async function tapsOf(page) {
  await page.waitForTimeout(300) // the last ones are told of once they were shown
  return page.evaluate(() => {
    const told = globalThis.lintelTaps.map(({ ms }) => ms)
    return [...told, ...Array.from({ length: Math.max(0, globalThis.lintelClicks - told.length) }, () => 16)]
  })
}

/** Touches the middle of a button, as a finger does once the page stands still: nothing else runs in the page for it. */
export async function touch(page, button) {
  await button.evaluate((one) => one.scrollIntoView({ block: 'center' }))
  await page.waitForTimeout(150)
  const { x, y, width, height } = await button.boundingBox()
  await page.touchscreen.tap(x + width / 2, y + height / 2)
}

/** The value below which a share of the values lie. */
export const at = (values, share) => values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? null
