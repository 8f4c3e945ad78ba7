import { expect, test } from 'vitest'
import { buildings } from '../buildings'
import { layOut } from './layout'
import { corners, facingOf, frameView } from './view'
import { toward, WHOLE, zoomFor } from './zoom'

for (const { id, scenario, sides } of buildings) {
  for (const side of sides) {
    const view = frameView(layOut(scenario), side, 1.2)

    for (const [narrow, aspect] of [[true, 1.2], [false, 2]] as const) {
      test(`${id}, side ${side}: a ${narrow ? 'phone' : 'laptop'}'s section is larger, and all of it in the picture`, () => {
        const whole = frameView(layOut(scenario), side, aspect)
        const { x, y, scale } = zoomFor(whole, { cutaway: true, narrow, place: undefined })
        expect(scale).toBeGreaterThan(1.1)
        expect(x).toBeLessThanOrEqual(whole.leftM)
        expect(y).toBeLessThanOrEqual(whole.groundM - whole.layout.top)
        expect(y + whole.heightM / scale).toBeGreaterThanOrEqual(whole.groundM)
      })
    }

    test(`${id}, side ${side}: coming nearer shows the whole of the opening`, () => {
      for (const place of view.layout.places.filter((one) => facingOf(view, one) === 'eye')) {
        const { x, y, scale } = zoomFor(view, { cutaway: false, narrow: true, place })
        expect(scale).toBeGreaterThan(1.1)
        for (const point of corners(view, place)) {
          expect(point.x).toBeGreaterThan(x)
          expect(point.x).toBeLessThan(x + view.widthM / scale)
          expect(point.y).toBeGreaterThan(y)
          expect(point.y).toBeLessThan(y + view.heightM / scale)
        }
      }
    })
  }
}

test('it settles, and then is exactly there', () => {
  const at = { x: 0.3, y: 0.2, scale: 2 }
  let now = WHOLE
  for (let k = 0; k < 90; k++) now = toward(now, at, 1 / 60)
  expect(now).toBe(at)
})
