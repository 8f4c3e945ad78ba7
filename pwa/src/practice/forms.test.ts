import { expect, test } from 'vitest'
import { unseen } from './forms'
import type { Answered } from './record'

const answered = (family: string, seed: number) => ({ answer: { family, seed } }) as Answered

test('what was answered of a form is not asked again, and nothing else is left out', () => {
  const form = [{ family: 'a', seed: 1 }, { family: 'b', seed: 1 }, { family: 'c', seed: 2 }]
  expect(unseen(form, [])).toEqual(form)
  expect(unseen(form, [answered('b', 1), answered('a', 2)])).toEqual([form[0], form[2]])
  expect(unseen(form, form.map(({ family, seed }) => answered(family, seed)))).toEqual([])
})
