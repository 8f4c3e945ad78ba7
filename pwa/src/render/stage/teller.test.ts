import { beforeEach, expect, test, vi } from 'vitest'
import { box } from '../../buildings/box'
import { emptyFrame, frameLength, readFrame } from '../frame'
import { frameWith } from '../scene-for-tests'
import type { SceneProps } from '../scene-props'
import type { Lent } from './stage'
import { Teller } from './teller'

const size = { width: 390, height: 468 }
const page = { hidden: false }

beforeEach(() => {
  page.hidden = false
  vi.stubGlobal('document', page)
  vi.stubGlobal('devicePixelRatio', 2)
})

/** A scene whose page is told of: `look` tells once and returns what was said. */
function scene(frame: SceneProps['frame']) {
  const said: Record<string, unknown>[] = []
  const lent = { tell: (told: Record<string, unknown>) => said.push(structuredClone(told)) }
  const teller = new Teller(lent as unknown as Lent)
  const props: SceneProps = { scenario: box, side: 'A', frame }
  const look = (over: Partial<SceneProps> = {}, letters?: number) => {
    said.length = 0
    teller.tell({ props: { ...props, ...over }, chosen: undefined, standing: { near: false, far: false } }, { ...size, ...(letters && { letters }) })
    return said.map((told) => Object.keys(told)[0])
  }
  return { said, look }
}

test('everything is told once, and then only what changes', () => {
  const frame = frameWith({})
  const { look } = scene(() => frame)
  expect(look()).toEqual(['scenario', 'standing', 'frame'])
  expect(look()).toEqual([])
  frame.openings[0]!.outVelocityMS += 0.1
  expect(look()).toEqual(['frame'])
  expect(look({ side: 'B' })).toEqual(['standing'])
  expect(look({ side: 'B', scenario: { ...box } })).toEqual(['scenario', 'frame'])
})

test('a frame arrives as it was, what is no number with it', () => {
  const frame = frameWith({ outTempC: NaN, flameKW: 12.5 })
  frame.header.tS = 77
  const { said, look } = scene(() => frame)
  look()
  const values = said.at(-1)!['frame'] as Float64Array
  expect(values.length).toBe(frameLength(box.compartments.length, box.openings.length))
  expect(readFrame(values, box.compartments.length, box.openings.length)).toEqual(frame)
  expect(readFrame(values, box.compartments.length, box.openings.length)).not.toEqual(emptyFrame(box.compartments.length, box.openings.length))
  expect(look()).toEqual([]) // not a number, but the same
})

test('a page out of sight is told to be, and of no frame until it is looked at', () => {
  const frame = frameWith({})
  const { said, look } = scene(() => frame)
  look()
  page.hidden = true
  frame.header.tS = 1
  expect(look()).toEqual(['standing'])
  expect(said[0]!['standing']).toMatchObject({ shown: false })
  frame.header.tS = 2
  expect(look()).toEqual([])
  page.hidden = false
  expect(look()).toEqual(['standing', 'frame'])
})

test('a fire that is gone is told of once', () => {
  let frame: ReturnType<SceneProps['frame']> = frameWith({})
  const { look } = scene(() => frame)
  look()
  frame = null
  expect(look()).toEqual(['frame'])
  expect(look()).toEqual([])
})

test('letters that are read from afar make a smaller picture that is drawn as much finer', () => {
  const { said, look } = scene(() => null)
  look()
  expect(said[1]!['standing']).toMatchObject({ size: { width: 390, height: 468, density: 2 } })
  look({}, 1.5)
  expect(said[0]!['standing']).toMatchObject({ size: { width: 260, height: 312, density: 3 } })
})
