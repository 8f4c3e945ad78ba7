import { afterEach, expect, test } from 'vitest'
import { busy, guardBusy, offerUpdate, updateOffered, updateWaits } from './update'

afterEach(() => {
  busy.value = false
  updateWaits.value = false
})

test('an update is offered when it is there, but not while an item is open', () => {
  expect(updateOffered.value).toBe(false)
  busy.value = true
  offerUpdate({} as ServiceWorker)
  expect(updateOffered.value).toBe(false)
  busy.value = false
  expect(updateOffered.value).toBe(true)
})

test('leaving a screen frees it', () => {
  busy.value = true
  let left = 0
  guardBusy(() => left++)()
  expect(busy.value).toBe(false)
  expect(left).toBe(1)
})
