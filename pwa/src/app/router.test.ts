import { afterEach, beforeEach, expect, test, vi } from 'vitest'

const address = { pathname: '/' }
let frames: FrameRequestCallback[] = []
const pushed = () => vi.mocked(history.pushState).mock.calls.map((call) => call[2])

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout'] })
  vi.resetModules()
  address.pathname = '/'
  frames = []
  vi.stubGlobal('location', address)
  vi.stubGlobal('history', { pushState: vi.fn<History['pushState']>((_state, _title, to) => { address.pathname = String(to) }) })
  vi.stubGlobal('scrollTo', () => {})
  vi.stubGlobal('requestAnimationFrame', (then: FrameRequestCallback) => frames.push(then))
})

afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

/** The page paints what it shows now. */
function paint(): void {
  for (const then of frames.splice(0)) then(0)
  vi.advanceTimersByTime(1)
}

test('a tap is answered at once, and the screen comes when that was painted', async () => {
  const { go, headingFor, place } = await import('./router')
  go('/drill')
  expect([headingFor.value, place.value.screen]).toEqual(['drill', ''])
  paint()
  expect([headingFor.value, place.value.screen]).toEqual(['drill', 'drill'])
})

test('a page out of sight, which paints nothing, gets there too', async () => {
  const { go, place } = await import('./router')
  go('/board/7')
  vi.advanceTimersByTime(99)
  expect(place.value.screen).toBe('')
  vi.advanceTimersByTime(1)
  expect(place.value).toEqual({ screen: 'board', rest: ['7'] })
})

test('of two taps in one picture the later counts, and one that leads back leads nowhere else', async () => {
  const { go, place } = await import('./router')
  go('/drill')
  go('/log')
  paint()
  expect(place.value.screen).toBe('log')
  go('/drill')
  go('/log')
  expect(pushed()).toEqual(['/drill', '/log', '/drill', '/log'])
  paint()
  expect(place.value.screen).toBe('log')
})
