import type { scene as english } from '../en/scene'
import type { Like } from '../like'

// Lo que la imagen dice de sí misma, para quien la oye en lugar de verla.

function tenths(n: number): string {
  if (n >= 10) return 'todo'
  return n <= 0 ? 'menos de una décima parte' : n === 1 ? 'una décima parte' : `${n} décimas`
}

function time(s: number): string {
  if (s < 0.15) return 'una décima de segundo o menos'
  if (s < 0.95) return `${Math.round(10 * s)} décimas de segundo`
  const whole = Math.round(s)
  return whole === 1 ? 'un segundo' : `${whole} segundos`
}

function shade(n: number): string {
  if (n <= 0) return 'Es blanco.'
  return n >= 10 ? 'Es negro.' : `Su tono está a ${tenths(n)} del camino del blanco al negro.`
}

export const scene: Like<typeof english> = {
  seen: ({ side }) => `Usted ve el lado ${side}.`,
  seenFar: ({ side }) => `Usted ve el lado ${side} desde el otro lado de la calle, pequeño y entre bruma.`,
  light: {
    day: 'Es un día nublado.',
    dusk: 'Anochece.',
    night: 'Es de noche, y hay luces de trabajo en este lado.',
  },
  wind: {
    left: 'El viento sopla desde la izquierda.',
    right: 'El viento sopla desde la derecha.',
    front: 'El viento da en este lado.',
    behind: 'El viento sopla desde detrás.',
  },
  bends: { left: 'Dobla el humo hacia la izquierda.', right: 'Dobla el humo hacia la derecha.' },
  behind: 'Sube humo de un lado que no se ve.',

  shut: ({ opening }) => `${opening}: cerrada.`,
  open: ({ opening }) => `${opening}: abierta.`,
  part: ({ opening, share }) => `${opening}: abierta en ${tenths(share)}.`,
  vent: ({ opening }) => `${opening}: una rejilla siempre abierta.`,

  glassClear: 'Su vidrio está limpio.',
  glassSmoky: ({ share }) => `Hay humo tras su vidrio, en ${share >= 10 ? 'todo él' : `${tenths(share)} de su parte alta`}.`,
  glassStained: ({ hidden }) => `Una película parda y negra en su vidrio esconde ${tenths(hidden)} de lo que hay detrás.`,
  glassCrazed: 'Grietas finas recorren su vidrio.',
  glassBroken: 'Su vidrio se ha roto y caído.',

  swatch: 'Una abertura en una pared de tablas está abierta.',
  nothing: 'No sale nada.',
  outOfAll: 'Sale humo por toda ella.',
  outAbove: ({ share }) => `Sale humo por ${tenths(share)} de su parte alta.`,
  outAtEdge: 'Sale humo por su borde.',
  column: 'Sube humo por toda ella y forma una columna.',
  hides: ({ share }) => `El humo esconde ${tenths(share)} de lo que hay detrás.`,
  folded: 'Su cara muestra pliegues.',
  shade: ({ tenths: n }) => shade(n),
  brown: 'Es parduzco.',
  speed: ({ seconds }) => `Recorre la altura de la abertura en ${time(seconds)}.`,
  still: 'Apenas se mueve.',
  smooth: 'Sus bordes son suaves.',
  rolling: 'Sus bordes ruedan.',
  breathing: ({ perMinute }) => `Alterna entre salir y entrar, unas ${perMinute} veces por minuto.`,
  vanishing: 'Se desvanece poco después de salir.',
  banks: 'Se extiende bajo el alero y rueda hacia arriba por su borde.',
  flame: ({ heights }) =>
    heights < 1
      ? `Se ve llama en ella, de ${tenths(Math.max(1, Math.round(10 * heights)))} de su altura.`
      : heights < 1.5
        ? 'Sale llama de ella, más o menos tan larga como ella alta.'
        : 'Sale llama de ella, más larga que su altura.',
  fireInside: 'Algo arde a la vista detrás.',

  drawnIn: 'Entra aire por debajo.',
  drawnInAll: 'Entra aire por toda ella.',
  drawnInGaps: 'Entra aire por sus rendijas.',
  drawnDown: 'Baja aire por ella.',

  plane: 'plano neutro',
  arrows: 'Cada flecha mide lo que el humo recorre en un cuarto de segundo.',
  openBy: (percent) => `abierta al ${percent} por ciento`,
  view: 'Cómo se ve el edificio',
  nearer: 'Más cerca',
  farther: 'Más lejos',
  lightNow: { day: 'Luz: día', dusk: 'Luz: anochecer', night: 'Luz: noche' },
  picture: (side) => `El edificio visto desde el lado ${side}`,
}
