import type { wall as english } from '../en/class-wall'
import type { Like } from '../like'

/** Lo que dice el proyector: grande, pocas palabras, nunca un nombre. */
export const wall: Like<typeof english> = {
  title: 'Proyector',
  joinTitle: 'Entre con su teléfono',
  joinHow: 'Apunte la cámara a este código',
  joinType: (address) => `o abra ${address} y escriba`,
  codeLabel: 'Código para entrar en la clase',
  locked: 'Ahora no puede entrar nadie nuevo.',
  here: (n) => (n === 0 ? 'Aún no hay nadie' : n === 1 ? 'Hay 1 persona' : `Hay ${n} personas`),
  committed: (n, of) => `Han contestado ${n} de ${of}`,
  watch: 'Miren. Luego vienen las preguntas.',
  commit: 'Contesten en su teléfono',
  ownPace: 'Cada cual trabaja a su ritmo',
  compare: 'Lo que vio la clase',
  cutaway: 'La pared retirada',
  asItWas: (n, of) => `${n} de ${of} lo leyeron así`,
  apart: 'Las más alejadas:',
  said: (n, what) => `${n} ${n === 1 ? 'dijo' : 'dijeron'} «${what}»`,
  doubted: 'El instructor no está de acuerdo con la clave aquí',
  over: 'La clase ha terminado',
  overWhy: 'Las lecturas de cada cual están en su registro.',
  noToken: 'Abra esta página desde el tablero: muestra el enlace y el código del proyector.',
  refused: 'Este enlace al proyector ya no vale. Ábralo otra vez desde el tablero.',
  away: 'Sin conexión con la clase. Se intenta otra vez.',
  rehearsal: 'Ensayo',
}
