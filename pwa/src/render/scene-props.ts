import type { Scenario, Side } from '../wire.gen'
import type { Daylight } from './draw/palette'
import type { FrameLook } from './frame'

/** What a screen says of the scene it shows. */
export interface SceneProps {
  scenario: Scenario
  side: Side
  /** The newest frame, asked for at every step; null before there is one. */
  frame: () => FrameLook | null
  /** The wall is drawn away. */
  cutaway?: boolean
  /** The opening that is marked. */
  selected?: string | undefined
  /** Called when an opening is tapped. */
  onPick?: ((opening: string) => void) | undefined
  /** Given, every opening in sight can be dragged, tapped or keyed open: the share of it that stands open. */
  onOpen?: ((opening: string, open: number) => void) | undefined
  wind?: { m_s: number; from: Side | undefined }
  /** The light to begin with; left out, that which the page's theme goes with. */
  light?: Daylight | undefined
  /** The smoke stands still. */
  paused?: boolean
  /** The text twin is read out and shown by the caller instead. */
  silent?: boolean
}
