import { scene as words } from '../words/scene'
import { smokeTwin } from './describe'
import { stillOpening } from './frame'
import { swatchLook, view, type SwatchCue } from './swatch-look'

/** What the swatch of a level shows, in the words of a scene: never the level. */
export const swatchWords = (cue: SwatchCue, level: number): string =>
  [words.swatch, ...smokeTwin(view.layout.places[0]!, swatchLook(cue, level, stillOpening()))].join(' ')
