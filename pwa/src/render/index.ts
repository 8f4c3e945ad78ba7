// The picture: a building whose smoke moves as the engine says.

export { Scene, type SceneProps } from './scene'
export { describe } from './describe'
export { drawSwatch, type SwatchCue } from './swatch'
export { readFrame, emptyFrame, frameLength, type FrameLook, type OpeningLook, type CompartmentLook } from './frame'
export { openingName, spoken } from './names'
