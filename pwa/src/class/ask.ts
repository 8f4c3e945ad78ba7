// Calls to the server's API, each with an answer or a refusal that can be said
// to a person.

import { refused } from '../words/refused'

/** The server did not do it, or could not be reached (status 0). */
export class Refused extends Error {
  readonly status: number
  /** By what the server named it. One that stands in the catalogue of refusals is said in the page's language. */
  readonly code: string | undefined
  /** Which part of what was sent is at fault. */
  readonly where: string | undefined
  constructor(status: number, said: string, { code, where }: Pick<Fault, 'code' | 'where'> = {}) {
    super(said)
    this.name = 'Refused'
    this.status = status
    this.code = code
    this.where = where
  }
}

type Send = (path: string, init: RequestInit) => Promise<Response>

const patience = 20_000 // ms for one request; chosen by us for slow networks

/** Whom a request comes from: an instructor's cookie goes by itself, a device says who it is. */
export interface Device {
  device: string
  secret: string
}

/** A phone or tablet that was handed a class. */
export interface Lead {
  key: string
}

interface Fault {
  code?: string | undefined
  where?: string | undefined
  what?: string
  do?: string
}

type Method = 'GET' | 'POST' | 'PUT' | 'DELETE'

const overTheNetwork: Send = (to, init) => fetch(to, init)

/** Sends one request and gives the body of its answer. */
export async function ask<T>(method: Method, path: string, body?: object, from?: Device | Lead, send = overTheNetwork): Promise<T> {
  const response = await answered(method, path, body, from, send)
  return (response.status === 204 ? {} : await response.json().catch(() => ({}))) as T
}

/** Fetches a file whole: what is refused or cut off leaves none behind. */
export async function askFile(path: string, send = overTheNetwork): Promise<Blob> {
  const response = await answered('GET', path, undefined, undefined, send)
  return response.blob().catch(() => {
    throw new Refused(0, '')
  })
}

async function answered(method: Method, path: string, body: object | undefined, from: Device | Lead | undefined, send: Send): Promise<Response> {
  const headers: Record<string, string> = {}
  if (body) headers['content-type'] = 'application/json'
  if (from) headers['authorization'] = 'key' in from ? `Lead ${from.key}` : `Device ${from.device}:${from.secret}`
  const init: RequestInit = { method, headers, signal: AbortSignal.timeout(patience) }
  if (body) init.body = JSON.stringify({ v: 1, ...body })
  const response = await send(`/api/v1${path}`, init).catch(() => undefined)
  if (!response) throw new Refused(0, '')
  if (response.ok) return response
  const { error = {} } = (await response.json().catch(() => ({}))) as { error?: Fault }
  throw refusal(response.status, error)
}

/** What the code stands for in this page's language; else where, what and what to do, as one sentence. */
function refusal(status: number, fault: Fault): Refused {
  const { code, where, what } = fault
  const known = refused[code ?? '']
  const said = known ?? [where, what].filter(Boolean).join(' ') + (fault.do ? `: ${fault.do}` : '')
  return new Refused(status, said, { code, where })
}
