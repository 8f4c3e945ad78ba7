// A house of six rooms on two floors, every opening of which is moved now and then.
export function sixRooms() {
  const room = (id, x, floor) => ({ id, width_m: 3.6, depth_m: 3.6, height_m: 2.4, floor_m: floor, lining: 'gypsum', x_m: x, y_m: 0 })
  const door = (id, from, to) => ({ id, from, to, side: 'D', kind: 'door', sill_m: 0, width_m: 0.8, height_m: 2, open: 1 })
  const window = (id, from) => ({ id, from, to: 'outside', side: 'A', kind: 'window', sill_m: 0.9, width_m: 1.2, height_m: 1.1, open: 0.5 })
  const compartments = [room('a', 0, 0), room('b', 3.6, 0), room('c', 7.2, 0), room('d', 0, 2.6), room('e', 3.6, 2.6), room('f', 7.2, 2.6)]
  const openings = [
    door('ab', 'a', 'b'), door('bc', 'b', 'c'), door('de', 'd', 'e'), door('ef', 'e', 'f'),
    { id: 'stair', from: 'e', to: 'b', kind: 'floor_hole', area_m2: 1.8, shape: 'square', open: 1 },
    ...compartments.map(({ id }) => window(`window_${id}`, id)),
  ]
  const moves = Array.from({ length: 60 }, (_, i) => ({ t_s: 10 * i, opening: openings[i % openings.length].id, open: (i % 3) / 2, over_s: 2 }))
  const fuels = [{ id: 'sofa', in: 'a', kind: 'upholstered', mass_kg: 25, ignite_s: 0, place: 'wall' }]
  return { v: 1, ambient: { t_c: 15 }, compartments, openings, fuels, moves, end_s: 900 }
}
