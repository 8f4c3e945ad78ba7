import { expect, test } from 'vitest'
import { extentOf } from './extent'

const COLUMNS = 30
const ROWS = 20

function extent(cells: readonly (readonly [number, number])[]) {
  const values = new Uint32Array(COLUMNS * ROWS)
  for (const [x, y] of cells) values[y * COLUMNS + x] = 0x01000000
  const found = { x: -1, y: -1, across: -1, down: -1 }
  return extentOf(values, COLUMNS, ROWS, found) ? found : undefined
}

test('a picture in which nothing shows has no extent', () => {
  expect(extent([])).toBeUndefined()
})

test('one cell has three clear ones on every side', () => {
  expect(extent([[10, 8]])).toEqual({ x: 7, y: 5, across: 7, down: 7 })
})

test('all that shows is in it, and no more than the margin beside it', () => {
  expect(extent([[12, 4], [5, 9], [21, 9], [14, 15]])).toEqual({ x: 2, y: 1, across: 23, down: 18 })
})

test('at the edge of the picture it ends with the picture', () => {
  expect(extent([[0, 0]])).toEqual({ x: 0, y: 0, across: 4, down: 4 })
  expect(extent([[COLUMNS - 1, ROWS - 1]])).toEqual({ x: COLUMNS - 4, y: ROWS - 4, across: 4, down: 4 })
  expect(extent([[0, 0], [COLUMNS - 1, ROWS - 1]])).toEqual({ x: 0, y: 0, across: COLUMNS, down: ROWS })
})
