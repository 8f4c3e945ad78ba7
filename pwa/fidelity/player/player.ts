import { host, watch } from './host'
import { photograph } from './photograph'
import { drawWall, filmWall, whereOnWall } from './wall'

// The page on which scenes are drawn for tests; no build of the app contains it.

Object.assign(globalThis, { lintelPlayer: { photograph, drawWall, filmWall, whereOnWall, host, watch } })
