// The burn box with smoke at some of its front ports, as a scene to host.
const smoking = { open: 1, flow: 3, neutralPlane: 0.35, outVelocityMS: 0.8, inVelocityMS: 0.5, outTempC: 250, opticalDepth: 3, lightness: 0.4, churning: 1 }

export async function smokingBox(studio, count, width = 390) {
  const { emptyFrame } = await studio.module('/src/render/frame.ts')
  const { box } = await studio.module('/src/buildings/box.ts')
  const frame = emptyFrame(box.compartments.length, box.openings.length)
  const ports = box.openings.map((o, k) => (o.side === 'A' && o.to === 'outside' ? k : -1)).filter((k) => k >= 0)
  if (ports.length < count) throw new Error(`the box has ${ports.length} ports on its front, ${count} are needed`)
  for (const k of ports.slice(0, count)) Object.assign(frame.openings[k], smoking)
  return { scenario: box, side: 'A', frame, width }
}
