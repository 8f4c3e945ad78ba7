// The thread that draws, as a bench handles it: the browser slows a page's
// processor, and not its threads; so that thread slows itself.

/** The thread that draws of a page, once it runs. */
export async function drawingThread(page) {
  const found = () => page.workers().find((one) => one.url().includes('draw.worker'))
  return found() ?? page.waitForEvent('worker', { predicate: (one) => one.url().includes('draw.worker') })
}

/**
 * Makes the script of each of its pictures take so many times as long: while one
 * is made its clock goes that much faster, and then it waits until the clock is
 * right again. What the browser itself does after the script stays as quick as it is.
 */
export async function slowThread(thread, rate) {
  await thread.evaluate((times) => {
    const real = globalThis.lintelReal ??= { now: performance.now.bind(performance), frame: requestAnimationFrame.bind(globalThis) }
    let began
    performance.now = () => (began === undefined ? real.now() : began + times * (real.now() - began))
    globalThis.requestAnimationFrame = (then) => real.frame((now) => {
      began = real.now()
      then(now)
      const until = performance.now()
      began = undefined
      while (real.now() < until);
    })
  }, rate)
}

/** Notes the width in cells of every layer of smoke made from now on, with the time: the coarser, the narrower. */
export async function watchFineness(thread) {
  await thread.evaluate(() => {
    const Plain = globalThis.OffscreenCanvas
    globalThis.lintelMade = []
    globalThis.OffscreenCanvas = class extends Plain {
      constructor(width, height) {
        super(width, height)
        globalThis.lintelMade.push({ at: Date.now(), columns: width })
      }
    }
  })
}

export const finenessOf = (thread) => thread.evaluate(() => globalThis.lintelMade)
