import type { words as english } from '../en/frame'
import type { Like } from '../like'

/** Lo que dicen el marco, la pantalla de inicio y las partes comunes. */
export const words: Like<typeof english> = {
  screens: {
    sizeUp: { name: 'Evaluación', job: 'Valore lo que se ve en cada abertura y reciba una lectura con sus razones.' },
    prop: { name: 'Maqueta', job: 'Encienda la maqueta, ábrala y ciérrela, y vea cómo responde el humo.' },
    drill: { name: 'Práctica', job: 'Series cortas de escenas. Primero comprométase; luego se retiran las paredes.' },
    class: { name: 'Clase', job: 'Entre en una clase o dirija una: la misma escena para todos, y quién vio qué.' },
    book: { name: 'Cuaderno', job: 'Lecciones, palabras, avisos y fuentes.' },
    log: { name: 'Registro', job: 'Cómo va su vista, señal por señal. Su propio historial.' },
  },
  app: {
    name: 'Lintel',
    home: 'Lintel, al inicio',
    nav: 'Pantallas',
    skip: 'Saltar al contenido',
    theme: 'Colores',
    newcomer: (letters) => `Aprendiz ${letters}`,
    close: 'Cerrar',
    back: 'Atrás',
    earlier: 'Última mirada',
    truth: 'Era',
    yours: 'Usted',
    notSet: 'Sin fijar',
    flowHint: 'En cada dibujo el lado sombreado es el interior.',
    planeHint: 'Arrastre o toque donde acaba el humo y empieza el aire',
    higher: 'Más alto',
    lower: 'Más bajo',
    tryAgain: 'Probar otra vez',
    backHome: 'Volver al inicio',
    noSuchPlace: 'No hay nada en esta dirección',
    stopped: 'Esta pantalla se detuvo',
    stoppedWhy: 'Algo en ella falló. Lo que contestó antes está guardado en este dispositivo.',
    notLoaded: 'Esta pantalla no se pudo cargar',
    notLoadedWhy: 'Aún no estaba en este dispositivo, y no se alcanzó el servidor.',
    updateReady: 'Hay una versión nueva en este dispositivo.',
    updateNow: 'Usarla ahora',
    unstarted: {
      not_here: 'El motor aún no está en este dispositivo, y no se alcanzó el servidor. Conéctese una vez y pruebe de nuevo.',
      no_webassembly: 'Este navegador no tiene WebAssembly y no puede correr el motor. Use uno más nuevo; el cuaderno se puede leer aquí igualmente.',
    },
    notValidated: 'Modelo aún sin validar',
    notValidatedWhy: (held, all) =>
      `El modelo de fuego se compara con medidas publicadas de fuegos reales. De las ${all} líneas que debe superar, hoy se cumplen ${held}: aún no está validado. Aprenda de él causa y efecto; no aprenda números.`,
  },
  plainSources: {
    common_practice: 'Práctica común (sin fuente)',
    from_memory: 'De memoria, por confirmar',
    chosen_by_us: 'Elegido por nosotros',
  },
  themes: { auto: 'Auto', light: 'Claro', dark: 'Oscuro', outdoor: 'Exterior' },
  caution: {
    trainingOnly: 'Solo para entrenamiento.',
    notAtIncident: 'No usar en una emergencia, en camino a ella ni al conducir.',
    banner: 'ENTRENAMIENTO, NO ES UNA EMERGENCIA',
    name: 'Avisos',
    more: (n) => (n === 1 ? 'Un aviso más' : `${n} avisos más`),
  },
  home: {
    title: 'Empiece por la abertura',
    lead: 'Mire una abertura. Diga qué hace. Vea luego qué había tras la pared.',
    next: 'Lo siguiente para usted',
    fresh: 'Una serie de escenas nuevas',
    due: (n) => (n === 1 ? 'Conviene volver a ver 1 clase de escena' : `Conviene volver a ver ${n} clases de escena`),
    resume: (at, of) => `Seguir con la escena ${at} de ${of}`,
  },
  sync: {
    unsynced: (n) => (n === 1 ? '1 anotación sin sincronizar' : `${n} anotaciones sin sincronizar`),
    offline: 'Sin conexión',
    plainHttp:
      'El uso sin conexión está apagado: esta página llegó por http simple, y los navegadores solo permiten copias sin conexión por https. Todo funciona mientras esta página siga abierta.',
    unsupported: 'El uso sin conexión está apagado: este navegador no tiene service workers.',
    preparing: 'Haciendo una copia para usar sin conexión',
    ready: 'Este dispositivo tiene todo lo que necesita sin conexión.',
    keepsNothing: 'Este navegador no guarda nada: puede ser una ventana privada, o el almacenamiento está apagado. Lo que se haga aquí se ve, pero se pierde al cerrar la página, y no queda registro.',
  },
}
