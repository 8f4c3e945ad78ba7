import { photograph } from './photograph'

// The page on which scenes are drawn for tests; no build of the app contains it.

Object.assign(globalThis, { lintelPlayer: { photograph } })
