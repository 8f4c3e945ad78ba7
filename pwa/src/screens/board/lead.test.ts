import { expect, test } from 'vitest'
import { Refused } from '../../class/ask'
import type { Act } from '../../class/desk'
import { Lead } from './lead'

/** A server that answers when it is told to. */
function server() {
  const sent: string[] = []
  const waiting: ((failed?: Error) => void)[] = []
  const lead = new Lead('c', undefined, (_id, what) => {
    sent.push(what.kind)
    return new Promise((resolve, reject) => waiting.push((failed) => (failed ? reject(failed) : resolve({ seq: sent.length }))))
  })
  const answer = async (failed?: Error) => {
    waiting.shift()!(failed)
    await new Promise((go) => setTimeout(go))
  }
  return { lead, sent, answer }
}

const start: Act = { kind: 'started' }
const undo: Act = { kind: 'undone' }
const settled = () => new Promise((go) => setTimeout(go))

test('what is pressed before the answer to the step is here comes after it, and is not lost', async () => {
  const { lead, sent, answer } = server()
  const [started, undone] = [lead.do(start), lead.do(undo)]
  await settled()
  expect(sent).toEqual(['started'])
  await answer()
  expect(sent).toEqual(['started', 'undone'])
  expect(lead.waiting.value).toBe(true)
  await answer()
  expect([await started, await undone]).toEqual([true, true])
  expect(lead.waiting.value).toBe(false)
})

test('a double press is one press; pressed again once it was done it is another', async () => {
  const { lead, sent, answer } = server()
  void lead.do(start)
  expect(await lead.do(start)).toBe(false)
  await settled()
  await answer()
  expect(sent).toEqual(['started'])
  void lead.do(start)
  await settled()
  expect(sent).toEqual(['started', 'started'])
})

test('what the server refused is said until something else is done', async () => {
  const { lead, answer } = server()
  const first = lead.do(start)
  await settled()
  await answer(new Refused(409, 'the class has ended: open another'))
  expect(await first).toBe(false)
  expect(lead.failed.value).toContain('the class has ended')
  void lead.do(undo)
  await settled()
  expect(lead.failed.value).toBeUndefined()
})
