import { expect, test } from 'vitest'
import { labelBox, type Align, type Box } from './marks'
import { Notes } from './notes'
import type { Palette } from './palette'
import type { Pen } from './pen'

/** A pen that writes six pixels a letter and keeps what it wrote. */
function bench() {
  const written: string[] = []
  const ctx = {
    globalAlpha: 1,
    measureText: (text: string) => ({ width: 6 * text.length }),
    save() {}, restore() {}, translate() {}, scale() {}, fillRect() {},
    fillText: (text: string) => written.push(text),
  }
  const pen = { ctx, pixel: 0.01 } as unknown as Pen
  return { pen, notes: new Notes(pen, { paper: '#fff', ink: '#000' } as Palette), written }
}

const spot = (x: number, y: number, align: Align = 'left') => ({ x, y, align })
const meet = (a: Box, b: Box) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1

test('a figure whose place is taken goes to the next that is free', () => {
  const { pen, notes, written } = bench()
  const [arrow, free] = [spot(1, 1), spot(2, 1)]
  notes.take(labelBox(pen, '300 °C', arrow))
  expect(notes.write('300 °C', [arrow, free])).toBe(true)
  expect(notes.write('O₂ 9 %', [free])).toBe(false) // the first one stands there now
  expect(written).toEqual(['300 °C'])
})

test('a place to be shunned is taken only where no other is free', () => {
  const { pen, notes } = bench()
  notes.shun(labelBox(pen, '300 °C', spot(1, 1)))
  notes.write('300 °C', [spot(1, 1), spot(2, 1)])
  expect(notes.write('300 °C', [spot(2, 1)])).toBe(false) // it stands there, though the first was free
  expect(notes.write('300 °C', [spot(2, 1), spot(1, 1)])).toBe(true)
})

test('what must be told is written all the same, what need not be is left out', () => {
  const { pen, notes, written } = bench()
  notes.take(labelBox(pen, '20 °C', spot(1, 1)))
  expect(notes.write('O₂ 9 %', [spot(1, 1)])).toBe(false)
  expect(notes.write('20 °C', [spot(1, 1)], true)).toBe(true)
  expect(written).toEqual(['20 °C'])
})

test('the place of a figure is the paper under it, at either end of its text', () => {
  const { pen } = bench()
  const left = labelBox(pen, 'ab', spot(1, 1))
  const right = labelBox(pen, 'ab', spot(1, 1, 'right'))
  expect(left.x0).toBeCloseTo(0.97)
  expect(left.x1 - left.x0).toBeCloseTo(0.18)
  expect(left.y1 - left.y0).toBeCloseTo(0.15)
  expect(right.x1).toBeCloseTo(1.03)
  expect(meet(left, right)).toBe(true)
})
