// Notes, in a page, how long after each tap the next picture is due.

/** To run in a page before anything else: from the tap's own time stamp until the frame that shows its effect is laid out and handed over. */
export function noteTaps() {
  globalThis.lintelTaps = []
  addEventListener('click', (event) => {
    requestAnimationFrame(() => {
      const after = new MessageChannel() // its message comes when the frame's own work is done
      after.port1.addEventListener('message', () => globalThis.lintelTaps.push(performance.now() - event.timeStamp), { once: true })
      after.port1.start()
      after.port2.postMessage(0)
    })
  }, { capture: true })
}

/** The value below which a share of the values lie. */
export const at = (values, share) => values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? null
