import { isSmall } from '../eaves'
import type { FrameLook } from '../frame'
import { blocks, facingOf, project, type Block, type Point, type View } from '../view'
import { drawCrate } from './crate'
import { drawHouseBlock, drawRoof, underEaves } from './house'
import { drawOpening } from './openings'
import type { Palette } from './palette'
import { fill, type Pen } from './pen'

/** Draws the walls, roof and openings of the side that is looked at. */
export function drawBuilding(pen: Pen, view: View, palette: Palette, frame: FrameLook): void {
  const small = isSmall(view)
  const all = blocks(view)
  standing(pen, view, palette, all)
  for (const block of all) {
    if (small) drawCrate(pen, view, palette, block)
    else if (!block.box.attic) drawHouseBlock(pen, view, palette, block, all)
  }
  if (!small) underEaves(pen, view, palette)
  const places = view.layout.places.filter((place) => facingOf(view, place) !== 'up')
  for (const place of places) drawOne(pen, view, palette, place, frame)
  if (!small) for (const block of all) drawRoof(pen, view, palette, block, all)
  // Vents of a gable lie in its face, and hatches on its slope: over the roof.
  for (const place of view.layout.places) {
    if (facingOf(view, place) === 'up' || inAttic(view, place.opening.from)) drawOne(pen, view, palette, place, frame)
  }
}

const inAttic = (view: View, id: string) => view.layout.boxes.some((box) => box.id === id && box.attic)

function drawOne(pen: Pen, view: View, palette: Palette, place: View['layout']['places'][number], frame: FrameLook): void {
  const facing = facingOf(view, place)
  if (facing === 'eye' || facing === 'right' || facing === 'up') drawOpening(pen, view, palette, place, facing, frame)
}

/** What the building shades on the ground, so that it stands: along its foot, and away to the right. */
function standing(pen: Pen, view: View, palette: Palette, all: Block[]): void {
  const a0 = Math.min(...all.map((b) => b.a0))
  const a1 = Math.max(...all.map((b) => b.a1))
  const d1 = Math.max(...all.map((b) => b.d1))
  const reach = 0.28 * view.layout.top
  const at = (a: number, d: number): Point => project(view, a, 0, d)
  const quad = [at(a0, 0), at(a1, 0), at(a1, d1), at(a1 + reach, d1 - 0.1 * reach), at(a1 + reach, 0.25 * d1), at(a1 + 0.3 * reach, -0.12 * reach), at(a0, -0.1 * reach)]
  pen.ctx.save()
  pen.ctx.globalAlpha *= 0.62
  fill(pen, quad, palette.shade)
  pen.ctx.restore()
}
