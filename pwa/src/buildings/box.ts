import file from '../../../content/buildings/box.json'
import { built } from './scenario'

// The small box: two storeys, four compartments of 0.6 m, and a void under the
// roof, in 12 mm boards. Dimensions are chosen by us: to stand on a table and to
// burn on a handful of straw.

export const { scenario: box, moves: boxMoves } = built(file)
