import uPlot from 'uplot'
import 'uplot/dist/uPlot.min.css'
import { prop } from '../../words/prop'
import type { Series } from './series'

// One curve on a canvas, in the colours of the page. Loaded when first shown.

/** A move on the time axis. */
export interface Mark { tS: number; text: string; second: boolean }

export interface Drawn { series: Series; marks: readonly Mark[]; shownS: number }

const HEIGHT = 150
const FONT = '12px system-ui, sans-serif'
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
    const { ink, soft, line, accent } = this.#colours
    const axis: uPlot.Axis = { stroke: soft, font: FONT, grid: { stroke: line, width: 1 }, ticks: { stroke: line, width: 1, size: 4 } }
    return {
      width: Math.max(200, place.clientWidth), height: HEIGHT, padding: [8, 6, 0, 0],
      legend: { show: false },
      cursor: { y: false, points: { show: false }, drag: { x: false, y: false } },
      scales: { x: { time: false }, y: { range: (_, low, high) => fromZero(low, high) } },
      axes: [
        { ...axis, size: 34, space: 56, values: (_, at) => at.map((t) => prop.clock(t)), incrs: [1, 2, 5, 10, 15, 30, 60, 120, 300, 600] },
        { ...axis, size: 46, space: 28 },
      ],
      series: [
        {},
        ...this.#drawn.series.lines.map(({ fire, layer }): uPlot.Series => ({
          stroke: fire === 'first' ? ink : accent, width: layer === 'lower' ? 1 : 2.25, points: { show: false },
          ...(fire === 'second' && { dash: DASHES }),
        })),
      ],
      hooks: {
        draw: [(plot) => this.#marks(plot)],
        ready: [(plot) => plot.over.addEventListener('click', (event) => seek(Math.max(0, plot.posToVal(event.offsetX, 'x'))))],
      },
    }
  }

  /** Every move as a numbered stroke, and the moment shown as a bar. */
  #marks(plot: uPlot): void {
    const { ctx, bbox } = plot
    const { soft, accent, ink } = this.#colours
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
    ctx.font = `600 ${11 * devicePixelRatio}px system-ui, sans-serif`
    ctx.textAlign = 'center'
    for (const { tS, text, second } of this.#drawn.marks) {
      const colour = second ? accent : soft
      ctx.setLineDash([2 * devicePixelRatio, 3 * devicePixelRatio])
      upright(at(tS), 1, colour)
      ctx.setLineDash([])
      ctx.fillStyle = colour
      ctx.fillText(text, at(tS), bbox.top + (second ? 22 : 10) * devicePixelRatio)
    }
    upright(at(this.#drawn.shownS), 1.5, ink)
    ctx.restore()
  }
}

interface Colours { ink: string; soft: string; line: string; accent: string }

function coloursOf(place: HTMLElement): Colours {
  const style = getComputedStyle(place)
  const token = (name: string) => style.getPropertyValue(name).trim()
  return { ink: token('--ink'), soft: token('--ink-soft'), line: token('--line'), accent: token('--accent') }
}

/** An axis that begins at nothing, so that no small change looks like a large one. */
function fromZero(_low: number | null, high: number | null): [number, number] {
  return [0, high !== null && high > 0 ? 1.08 * high : 1]
}
