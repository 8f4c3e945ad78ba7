import uPlot from 'uplot'
import 'uplot/dist/uPlot.min.css'
import { rounded } from '../../words/number'
import { prop } from '../../words/prop'
import type { Series } from './series'

// One curve on a canvas, in the colours of the page. Loaded when first shown.

/** A move on the time axis. */
export interface Mark { tS: number; text: string; second: boolean }

/** What is drawn: the unit stands at every number of the upright axis. */
export interface Drawn { unit: string; series: Series; marks: readonly Mark[]; shownS: number }

const HEIGHT = 150
const DASHES = [7, 4]

export class Plot {
  #plot: uPlot
  #drawn: Drawn
  readonly #colours: Colours

  constructor(place: HTMLElement, drawn: Drawn, seek: (tS: number) => void) {
    this.#drawn = drawn
    this.#colours = coloursOf(place)
    this.#plot = new uPlot(this.#options(place, seek), this.#data(), place)
  }

  show(drawn: Drawn): void {
    if (drawn.series.lines.length !== this.#drawn.series.lines.length) return // a fire came or went: another plot is about to take this one's place
    this.#drawn = drawn
    this.#plot.setData(this.#data())
  }

  resize(width: number): void {
    this.#plot.setSize({ width, height: HEIGHT })
  }

  close(): void {
    this.#plot.destroy()
  }

  #data(): uPlot.AlignedData {
    const { tS, lines } = this.#drawn.series
    return [tS, ...lines.map(({ values }) => values)]
  }

  #options(place: HTMLElement, seek: (tS: number) => void): uPlot.Options {
    const { ink, soft, line, accent, letterPx } = this.#colours
    const axis: uPlot.Axis = { stroke: soft, font: `${letterPx}px system-ui, sans-serif`, grid: { stroke: line, width: 1 }, ticks: { stroke: line, width: 1, size: 4 } }
    return {
      width: Math.max(200, place.clientWidth), height: HEIGHT, padding: [8, 8, 0, 0],
      legend: { show: false },
      cursor: { y: false, points: { show: false }, drag: { x: false, y: false } },
      scales: { x: { time: false }, y: { range: (_, low, high) => fromZero(low, high) } },
      axes: [
        { ...axis, size: 2.4 * letterPx, space: 4.4 * letterPx, values: (_, at) => at.map((t) => prop.clock(t)), incrs: [1, 2, 5, 10, 15, 30, 60, 120, 300, 600] },
        { ...axis, size: 5.2 * letterPx, space: 28, values: (_, at) => at.map((value) => `${rounded(value, 2)} ${this.#drawn.unit}`) },
      ],
      series: [
        {},
        ...this.#drawn.series.lines.map(({ fire, layer }): uPlot.Series => ({
          stroke: fire === 'first' ? ink : accent, width: layer === 'lower' ? 1 : 2.25, points: { show: false },
          ...(fire === 'second' && { dash: DASHES }),
        })),
      ],
      hooks: {
        draw: [(plot) => this.#marks(plot), (plot) => this.#names(plot)],
        ready: [(plot) => plot.over.addEventListener('click', (event) => seek(Math.max(0, plot.posToVal(event.offsetX, 'x'))))],
      },
    }
  }

  /** Every move as a numbered stroke, and the moment shown as a bar. */
  #marks(plot: uPlot): void {
    const { ctx, bbox } = plot
    const { soft, accent, ink, letterPx } = this.#colours
    const at = (tS: number) => Math.round(plot.valToPos(tS, 'x', true)) + 0.5
    const upright = (x: number, width: number, colour: string) => {
      ctx.strokeStyle = colour
      ctx.lineWidth = width * devicePixelRatio
      ctx.beginPath()
      ctx.moveTo(x, bbox.top)
      ctx.lineTo(x, bbox.top + bbox.height)
      ctx.stroke()
    }
    ctx.save()
    ctx.font = `600 ${letterPx * devicePixelRatio}px system-ui, sans-serif`
    ctx.textAlign = 'left'
    for (const { tS, text, second } of this.#drawn.marks) {
      const colour = second ? accent : soft
      ctx.setLineDash([2 * devicePixelRatio, 3 * devicePixelRatio])
      upright(at(tS), 1, colour)
      ctx.setLineDash([])
      ctx.fillStyle = colour
      ctx.fillText(text, at(tS) + 3 * devicePixelRatio, bbox.top + (second ? 2 : 1) * letterPx * devicePixelRatio)
    }
    upright(at(this.#drawn.shownS), 1.5, ink)
    ctx.restore()
  }

  /** The unit of the time, and the layer at the end of each line of the first fire that has one: above the upper one where there is space, below the lower one. */
  #names(plot: uPlot): void {
    const { ctx, bbox } = plot
    const { soft, ink, letterPx } = this.#colours
    const letter = letterPx * devicePixelRatio
    ctx.save()
    ctx.font = `${letter}px system-ui, sans-serif`
    ctx.fillStyle = soft
    ctx.textAlign = 'right'
    ctx.fillText(prop.timeUnit, bbox.left - 1.6 * letter, bbox.top + bbox.height + 1.6 * letter)
    ctx.fillStyle = ink
    const { tS, lines } = this.#drawn.series
    for (const { fire, layer, values } of lines) {
      const last = lastOf(values)
      if (fire === 'second' || layer === undefined || last < 0) continue
      const y = plot.valToPos(values[last]!, 'y', true)
      const above = layer === 'lower' || y - bbox.top > 2 * letter
      ctx.fillText(prop.key[layer], Math.max(plot.valToPos(tS[last]!, 'x', true), bbox.left + 7 * letter) - 0.5 * letter, above ? y - 0.5 * letter : y + 1.4 * letter)
    }
    ctx.restore()
  }
}

/** Where a line stands last, as an index, or -1. */
const lastOf = (values: readonly (number | null)[]) => values.findLastIndex((value) => value !== null)

interface Colours { ink: string; soft: string; line: string; accent: string; letterPx: number }

function coloursOf(place: HTMLElement): Colours {
  const style = getComputedStyle(place)
  const token = (name: string) => style.getPropertyValue(name).trim()
  return { ink: token('--ink'), soft: token('--ink-soft'), line: token('--line'), accent: token('--accent'), letterPx: Math.round(0.93 * parseFloat(style.fontSize)) }
}

/** An axis that begins at nothing, so that no small change looks like a large one. */
function fromZero(_low: number | null, high: number | null): [number, number] {
  return [0, high !== null && high > 0 ? 1.08 * high : 1]
}
