import { expect, test } from 'vitest'
import { classes as spanish } from '../words/es/class'
import { classes } from '../words/class'
import { Refused } from './ask'
import { say, sayJoin } from './say'

test('an English page says what the server says', () => {
  expect(say(new Refused(409, 'set is stale: load it again'), 'en')).toBe(classes.failed('set is stale: load it again'))
})

test('another page says no English sentence of the server for a status it knows', () => {
  for (const status of [400, 401, 403, 404, 409, 413, 500, 507]) {
    expect(say(new Refused(status, 'set is stale: load it again'), 'es')).toBe(classes.failedBy[status])
    expect(spanish.failedBy[status]).toMatch(/\.$/)
  }
  expect(say(new Refused(418, 'teapot'), 'es')).toBe(classes.failed('teapot'))
})

test('a person is not told to keep events: that is for the device', () => {
  for (const on of ['en', 'es'] as const) {
    expect(say(new Refused(507, 'keep the events and send them again later', { code: 'disk_full' }), on)).toBe(classes.failedBy[507])
  }
})

test('what has a code is said by it on every page', () => {
  const taken = new Refused(409, 'este indicativo está ocupado: elija otro', { code: 'taken' })
  expect(say(taken, 'es')).toBe(classes.failed('este indicativo está ocupado: elija otro'))
})

test('a call sign that is taken in the class is told apart from a wrong code', () => {
  expect(sayJoin(new Refused(409, 'somebody has it', { code: 'sign_taken' }))).toBe(classes.signTaken)
  expect(sayJoin(new Refused(404, 'no class', { code: 'no_entry' }))).toBe(classes.refused)
  expect(sayJoin(new Refused(409, 'is full: open another'))).toBe(classes.refused)
})
