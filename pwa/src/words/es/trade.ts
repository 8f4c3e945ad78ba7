// Las palabras del oficio para lo que nombra el motor.
import type { trade as english } from '../en/trade'
import type { Like } from '../like'

// Véase en/trade.ts: tan cerca del alféizar o del dintel no hay plano que nadie vea.
const edge = 0.05

function planeNone(share: number): string | undefined {
  if (share < edge) return 'No hay en la abertura: todo sale'
  return share > 1 - edge ? 'No hay en la abertura: entra aire por toda ella' : undefined
}

export const trade: Like<typeof english> = {
  stages: {
    incipient: 'Incipiente',
    growth: 'Crecimiento',
    pre_flashover: 'Previo al flashover',
    fully_developed: 'Desarrollo completo',
    ventilation_limited_decay: 'Decaimiento limitado por ventilación',
    decay: 'Decaimiento',
    after_knock_down: 'Tras el control inicial',
    undetermined: 'Indeterminada',
  },
  regimes: { fuel_limited: 'Limitado por combustible', ventilation_limited: 'Limitado por ventilación' },
  hazards: {
    flashover: 'Flashover',
    ventilation_induced_flashover: 'Flashover inducido por ventilación',
    backdraft: 'Backdraft',
    smoke_explosion: 'Explosión de humo',
  },
  flows: { out: 'Sale, todo', both: 'Sale arriba, entra abajo', in: 'Entra, todo', none: 'Nada se mueve' },
  roles: { in: 'Entrada', out: 'Salida', both: 'En ambos sentidos', none: 'Sin flujo', unknown: 'No se sabe' },
  sides: { A: 'Alfa', B: 'Bravo', C: 'Charlie', D: 'Delta' },
  states: { open: 'Abierta', part: 'Abierta en parte', closed: 'Cerrada', broken: 'Rota', unknown: 'No se distingue' },
  kinds: {
    door: 'Puerta',
    window: 'Ventana',
    vent: 'Rejilla',
    roof: 'Abertura de techo',
    hatch: 'Trampilla',
    crack: 'Grieta o rendija',
    other: 'Otra abertura',
  },
  cues: {
    flow: 'Flujo',
    volume: 'Volumen',
    velocity: 'Velocidad',
    density: 'Densidad',
    darkness: 'Oscuridad',
    colour: 'Tono',
    churning: 'Suave o agitado',
    pulsing: 'Pulsación',
    vanishes: 'Desaparece',
    flame: 'Llama',
    window: 'Vidrio',
    neutral_plane: 'Plano neutro',
  },
  flames: { none: 'Sin llama', tongues: 'Lenguas de llama', full: 'La llama la llena' },
  glass: { clear: 'Limpio', stained: 'Manchado u oscuro', crazed: 'Cuarteado o agrietado' },
  changes: { less: 'Menos', same: 'Casi igual', more: 'Más' },
  planeChanges: { less: 'Más bajo', same: 'Casi igual', more: 'Más alto' },
  roof: 'Techo',
  stage: 'Etapa',
  regime: 'Régimen',
  outside: 'exterior',
  cannotTell: 'No se distingue',
  yes: 'Sí',
  no: 'No',
  planeAt: (share) => planeNone(share) ?? `Al ${Math.round(share * 100)}\u00a0% de la altura`,
  planeNone,
}
