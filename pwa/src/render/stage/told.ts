import type { Scenario } from '../../wire.gen'
import type { Sheet } from '../draw/pen'
import type { Showing } from '../show'
import type { SwatchShowing } from '../swatch'

// What the page tells the thread that draws, and what that says back. Frames
// travel as the engine's own numbers.

/** What goes for all that a page shows. */
export interface PageLook {
  theme: string | undefined
  us: boolean
  /** Reduced motion was asked for. */
  calm: boolean
}

/** How one scene is looked at: all that is drawn of it but the building and its fire. */
export interface Standing extends Omit<Showing, 'scenario' | 'frame' | 'us' | 'theme' | 'backdrop' | 'inPieces'> {
  /** Whether it can be seen at all. */
  shown: boolean
}

export type Told =
  | { page: PageLook }
  | { id: number; kind: 'scene' | 'swatch'; canvas: Sheet }
  | { id: number; scenario: Scenario }
  | { id: number; standing: Standing }
  | { id: number; frame: Float64Array | null }
  | { id: number; swatch: Omit<SwatchShowing, 'theme'> }
  | { id: number; gone: true }

/** When pictures were begun, in ms since 1970, and the script time that each took: two numbers a picture. */
export interface Drawn { drawn: number[] }
