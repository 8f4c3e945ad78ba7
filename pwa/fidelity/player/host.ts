import { h, render } from 'preact'
import { Scene } from '../../src/render'
import type { FrameLook } from '../../src/render/frame'
import type { Scenario, Side } from '../../src/wire.gen'

/** A scene that runs as in the app, in real time, with a button beside it. */
export interface Hosted { scenario: Scenario; side: Side; frame: FrameLook; width: number }

/** Runs a scene until the next one is hosted, and counts its frames. */
export function host({ scenario, side, frame, width }: Hosted): void {
  const place = document.createElement('div')
  place.style.width = `${width}px`
  const button = document.createElement('button')
  button.id = 'tap'
  button.textContent = '0'
  button.style.cssText = 'width:100%;height:72px;font-size:24px'
  button.addEventListener('click', () => { button.textContent = String(Number(button.textContent) + 1) })
  unhost()
  document.body.replaceChildren(place, button)
  render(h(Scene, { scenario, side, frame: () => frame, silent: true }), place)
  hosted = place
}

let hosted: HTMLElement | undefined

function unhost(): void {
  if (hosted) render(null, hosted)
  hosted = undefined
}

/** Script time of every picture drawn in the next seconds, in milliseconds, as the app itself notes it. */
export function watch(seconds: number): Promise<number[]> {
  return new Promise((done) => {
    const took: number[] = []
    const observer = new PerformanceObserver((list) => {
      for (const entry of list.getEntriesByName('lintel-picture')) took.push(entry.duration)
    })
    observer.observe({ type: 'measure' })
    setTimeout(() => {
      for (const entry of observer.takeRecords()) if (entry.name === 'lintel-picture') took.push(entry.duration)
      observer.disconnect()
      done(took)
    }, seconds * 1000)
  })
}
