import { expect, test, vi } from 'vitest'
import { ask, askFile, Refused } from './ask'

const answering = (status: number, body: unknown) => {
  const calls: { path: string; init: RequestInit }[] = []
  const send = async (path: string, init: RequestInit) => {
    calls.push({ path, init })
    return new Response(JSON.stringify(body), { status })
  }
  return { calls, send }
}

test('a device says who it is, and the body carries the version', async () => {
  const { calls, send } = answering(200, { class: 'c1' })
  expect(await ask('POST', '/join', { code: 'ABCD' }, { device: 'd', secret: 's' }, send)).toEqual({ class: 'c1' })
  expect(calls[0]!.path).toBe('/api/v1/join')
  expect(calls[0]!.init.headers).toEqual({ 'content-type': 'application/json', authorization: 'Device d:s' })
  expect(JSON.parse(String(calls[0]!.init.body))).toEqual({ v: 1, code: 'ABCD' })
})

test('a refusal carries its status, one sentence and what is at fault', async () => {
  const { send } = answering(409, { error: { where: 'line 3', what: 'is there twice', do: 'take one out' } })
  await expect(ask('POST', '/rosters', {}, undefined, send)).rejects.toEqual(new Refused(409, 'line 3 is there twice: take one out', { where: 'line 3' }))
})

test('a server that cannot be reached is status 0; an answer that is no JSON is a refusal all the same', async () => {
  const gone = async () => Promise.reject(new TypeError('failed'))
  await expect(ask('GET', '/me', undefined, undefined, gone)).rejects.toMatchObject({ status: 0 })
  const garbled = async () => new Response('<html>', { status: 502 })
  await expect(ask('GET', '/me', undefined, undefined, garbled)).rejects.toMatchObject({ status: 502 })
})

test('a file comes whole, or its refusal is a sentence and there is none', async () => {
  const sent = async () => new Response('a,b')
  expect(await (await askFile('/rosters/r/export.csv', sent)).text()).toBe('a,b')
  const { send } = answering(507, { error: { code: 'disk_full', what: 'is full', do: 'wait' } })
  await expect(askFile('/rosters/r/export.csv', send)).rejects.toMatchObject({ status: 507, code: 'disk_full' })
  const cut = async () => new Response(new ReadableStream({ start: (into) => into.error(new TypeError('cut off')) }))
  await expect(askFile('/rosters/r/export.csv', cut)).rejects.toMatchObject({ status: 0 })
})

test('a refusal with a code is said in the language of the page; one that is not known as the server says it', async () => {
  const coded = answering(401, { error: { code: 'wrong_code', what: 'this code is wrong', do: 'ask for another' } })
  const unknown = answering(400, { error: { code: 'of tomorrow', what: 'is too new', do: 'wait' } })
  const why = (sent: ReturnType<typeof answering>, using = ask) => using('POST', '/claim', {}, undefined, sent.send).catch((error: Error) => error.message)
  expect(await why(coded)).toBe('this code is wrong, used up or too old: ask for another')
  expect(await why(unknown)).toBe('is too new: wait')
  vi.stubGlobal('navigator', { language: 'es-MX' })
  vi.resetModules()
  const { ask: pedir } = await import('./ask')
  expect(await why(coded, pedir)).toBe('este código es incorrecto, ya se usó o caducó: pida otro')
  expect(await why(unknown, pedir)).toBe('is too new: wait')
  vi.unstubAllGlobals()
})
