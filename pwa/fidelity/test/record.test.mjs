import { appendFileSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { Record } from '../lib/record.mjs'
import { scratch } from './scratch.mjs'

const path = () => join(scratch(), 'run.jsonl')

test('a run that was stopped in the middle of a line goes on after the last whole one', () => {
  const file = path()
  new Record(file, { seed: 1 }).add('true 0', { speed: 0.3 }, {})
  appendFileSync(file, '{"key":"true 1","seen":{"spe')
  const again = new Record(file, { seed: 1 })
  expect(again.seen('true 0')).toEqual({ speed: 0.3 })
  expect(again.seen('true 1')).toBeUndefined()
  again.add('true 1', { speed: 0.4 }, {})
  expect(new Record(file, { seed: 1 }).seen('true 1')).toEqual({ speed: 0.4 })
})

test('what another run measured is not taken over', () => {
  const file = path()
  new Record(file, { seed: 1 }).add('true 0', { speed: 0.3 }, {})
  expect(new Record(file, { seed: 2 }).seen('true 0')).toBeUndefined()
  expect(readFileSync(file, 'utf8').trimEnd().split('\n')).toHaveLength(1)
})
