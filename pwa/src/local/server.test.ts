import { expect, test } from 'vitest'
import type { Self } from './self'
import { HTTPServer, outcome } from './server'

const self: Self = { device: 'aa', secret: 'bb', callSign: 'Engine 3', registered: true, next: 2, acked: 0 }

test.each([
  [200, { v: 1, acked: 7 }, { kind: 'acked', acked: 7 }],
  [201, { v: 1 }, { kind: 'acked', acked: 0 }],
  [409, { acked: 3, error: { where: '', what: 'gap', do: '' } }, { kind: 'gap', acked: 3 }],
  [409, { error: { where: '', what: 'two histories', do: '' } }, { kind: 'forked' }],
  [401, null, { kind: 'unknown' }],
  [429, null, { kind: 'unreachable' }],
  [503, null, { kind: 'unreachable' }],
  [400, { error: { where: 'events[0].kind', what: 'is unknown', do: '' } }, { kind: 'refused', why: 'events[0].kind is unknown' }],
] as const)('status %i becomes what to do next', (status, body, expected) => {
  expect(outcome(status, body)).toEqual(expected)
})

test('events go with the device and its secret', async () => {
  let seen: RequestInit | undefined
  const server = new HTTPServer(async (path, init) => {
    seen = init
    return Response.json({ v: 1, acked: path === '/api/v1/events' ? 1 : 0 })
  })
  expect(await server.send(self, [])).toEqual({ kind: 'acked', acked: 1 })
  expect(new Headers(seen?.headers).get('authorization')).toBe('Device aa:bb')
})

test('no network is not an error to show', async () => {
  const server = new HTTPServer(() => Promise.reject(new TypeError('failed to fetch')))
  expect(await server.send(self, [])).toEqual({ kind: 'unreachable' })
})
