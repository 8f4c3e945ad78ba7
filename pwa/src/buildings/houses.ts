import bungalowFile from '../../../content/buildings/bungalow.json'
import flatsFile from '../../../content/buildings/flats.json'
import twoStoreyFile from '../../../content/buildings/two_storey.json'
import workshopFile from '../../../content/buildings/workshop.json'
import { built } from './scenario'

// Four full-size buildings, all invented. Sizes are those of ordinary small
// buildings, rounded to 0.1 m (chosen by us): storeys 2.4 m high, doors 0.9 m by
// 2.0 m, windows with their sill at 0.9 m. An attic is a box of the mean height
// of its pitched roof; a stair is one tall compartment.

export const { scenario: bungalow } = built(bungalowFile)
export const { scenario: twoStorey } = built(twoStoreyFile)
export const { scenario: flats } = built(flatsFile)
export const { scenario: workshop } = built(workshopFile)
