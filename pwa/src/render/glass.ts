import { layered, type FrameLook } from './frame'
import type { Place } from './layout'
import { opacity } from './tone'
import type { View } from './view'

// What a window pane shows while it is shut: the smoke that stands behind it
// down to its layer, the film that smoke has left on it, and the cracks that
// heat has put into it. All of it follows from the frame alone, so that a scene
// looks the same however it was come to.

export interface Glass {
  /** Optical depth of the layer behind the pane, and the height above ground of its lower edge, m. */
  depth: number
  layerM: number
  lightness: number
  tint: number
  /** Optical depth of the film on the pane. */
  film: number
  /** Cracked by heat. */
  crazed: boolean
}

// Soot and tar settle on a cold pane by thermophoresis at some tenths of a
// millimetre a second (order of magnitude from memory, to be confirmed); with
// the smoke of now taken for that of all the time since the fire began, half of
// which was thinner: chosen by us.
const SETTLES_MS = 1.5e-4

/** Ordinary window glass has cracked in rooms whose gas reached about this (from memory, to be confirmed). */
const CRACKS_C = 350

/** From this optical depth of film on, one calls a pane stained: half of the light is gone. Chosen by us. */
export const STAINED = 0.7

/** The pane of a window as the frame has it. */
export function glassOf(view: View, place: Place, frame: FrameLook): Glass {
  const index = view.layout.boxes.findIndex(({ id }) => id === place.opening.from)
  const box = view.layout.boxes[index]
  const room = frame.compartments[index]
  const smoke = thickest(view, place, frame)
  const layerM = box && room && layered(room) ? box.z0 + room.interfaceM : (box?.z1 ?? place.z1)
  const roomDeep = box ? Math.min(box.x1 - box.x0, box.y1 - box.y0) : 1
  const extinction = smoke?.extinctionM ?? 0
  return {
    depth: extinction * roomDeep, layerM, lightness: smoke?.lightness ?? 1, tint: smoke?.tint ?? 0,
    film: layerM < place.z1 ? extinction * SETTLES_MS * Math.max(0, frame.header.tS) : 0,
    crazed: room !== undefined && (layerM < place.z1 ? room.upperC : room.lowerC) > CRACKS_C,
  }
}

/** Smoke of the room behind: from its own gaps, or where those draw in, from another opening of the room. */
function thickest(view: View, place: Place, frame: FrameLook) {
  const own = frame.openings[place.index]
  if (own && own.extinctionM > 0) return own
  const others = view.layout.places.filter(({ opening }) => opening.from === place.opening.from)
  return others.map(({ index }) => frame.openings[index]).reduce(
    (best, one) => (one && one.extinctionM > (best?.extinctionM ?? 0) ? one : best), undefined,
  )
}

/** How much of what burns in the room can be seen through an opening: all where it stands open, what the pane and the layer behind it let through where it is shut. */
export function seenThrough(view: View, place: Place, frame: FrameLook): number {
  if ((frame.openings[place.index]?.open ?? 0) >= 0.02) return 1
  if (place.opening.kind !== 'window') return 0
  const { depth, film, layerM } = glassOf(view, place, frame)
  const covered = Math.max(0, Math.min(1, (place.z1 - layerM) / (place.z1 - place.z0)))
  return (1 - opacity(film)) * (1 - covered * opacity(depth))
}

/** A number that changes when a drawing of any pane would. */
export function glassHash(view: View, frame: FrameLook): number {
  let hash = Math.round(frame.header.tS / 20)
  for (const { opening, index } of view.layout.places) {
    if (opening.kind === 'window') hash = mix(hash, Math.round(10 * opacity(3 * (frame.openings[index]?.extinctionM ?? 0))))
  }
  for (const room of frame.compartments) {
    hash = mix(hash, layered(room) ? Math.round(4 * room.interfaceM) : 99)
    hash = mix(hash, (layered(room) && room.upperC > CRACKS_C ? 1 : 0) + (room.lowerC > CRACKS_C ? 2 : 0))
  }
  return hash
}

/** Adds a number to a hash (FNV-1a's prime; from memory, to be confirmed). */
export const mix = (hash: number, value: number): number => Math.imul(hash ^ (value | 0), 0x01000193)
