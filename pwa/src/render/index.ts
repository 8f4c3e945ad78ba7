// The picture: a building whose smoke moves as the engine says.

export { Scene } from './scene'
export type { SceneProps } from './scene-props'
export { describe } from './describe'
export type { SwatchCue } from './swatch-look'
export { swatchWords } from './swatch-words'
export { readFrame, emptyFrame, layered, frameLength, type FrameLook, type OpeningLook, type CompartmentLook } from './frame'
export { openingName, spoken, spokenWithin } from '../words/names'
