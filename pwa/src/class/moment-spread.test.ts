import { h } from 'preact'
import { renderToString } from 'preact-render-to-string'
import { expect, test } from 'vitest'
import type { ClassAskSpread } from '../wire.gen'
import { MomentSpread } from './moment-spread'

const said: ClassAskSpread = {
  ask: { id: 'moment', kind: 'moment', text: '', watch: { from_s: 60, to_s: 160 } },
  counts: [{ value: 'quiet', n: 2 }], planes: [], moments: [80, 90, 90], unsure: 0, apart: null, doubted: false, right: 2, judged: 5, mean_error: 0.5,
}
const drawn = (more: Partial<ClassAskSpread> = {}) => renderToString(h(MomentSpread, { said: { ...said, ...more }, name: 'Call-out', own: [{ name: 'You', reply: { ask: 'moment', at_s: 80 } }] }))

test('everyone who reported has a dot at their time, and who did not is counted', () => {
  const html = drawn()
  expect(html.match(/pile-dot/g)).toHaveLength(3)
  expect(html).toContain('left:20%')
  expect(html.match(/left:30%/g)).toHaveLength(2)
  expect(html).toContain('Nothing reported</dt><dd>2')
  expect(html).toContain('Reported at 20 s')
  expect(html).not.toContain('spread-time-true')
})

test('once the truth is told, it lies below them from when on it showed to what came', () => {
  const html = drawn({ truth: [{ ask: 'moment', at_s: 88, event_s: 110 }] })
  expect(html).toContain('left:28%;right:50%')
  expect(html).toContain('It began to show at 28 s. The event came at 50 s.')
})
