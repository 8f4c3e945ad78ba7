// Every sentence that a person reads, in English. One object a screen; a
// function where a number or a name goes into the sentence.
import { book } from './en/book'
import { drill } from './en/drill'
import { log } from './en/log'
import { sizeUp } from './en/size-up'
import { trade } from './en/trade'

const screens = {
  sizeUp: { name: 'Size-up', job: 'Rate what shows at each opening and get a reading with its reasons.' },
  prop: { name: 'Prop', job: 'Light the small box, open and shut it, and watch the smoke answer.' },
  drill: { name: 'Drill', job: 'Five scenes. Commit first, then the walls are drawn away.' },
  book: { name: 'Field book', job: 'Lessons, words, cautions and sources.' },
  log: { name: 'Log', job: 'How your eye is doing, cue by cue. Your own record.' },
}

export type ScreenName = keyof typeof screens

export const words = {
  screens,
  book,
  drill,
  log,
  sizeUp,
  trade,
  app: {
    name: 'Lintel',
    home: 'Lintel, to Home',
    nav: 'Screens',
    skip: 'Skip to the content',
    theme: 'Colours',
    close: 'Close',
    tryAgain: 'Try again',
    backHome: 'Back to Home',
    noSuchPlace: 'There is nothing at this address',
    notLoaded: 'This screen could not be loaded',
    notLoadedWhy: 'It was not on this device yet, and the server could not be reached.',
    updateReady: 'A new version is on this device.',
    updateNow: 'Use it now',
    loadingEngine: 'Starting the engine on this device',
    engineFailed: 'The engine did not start',
    notValidated: 'Model not yet validated',
    notValidatedWhy:
      'The fire model has not yet passed its table of published measurements. Learn cause and effect from it; do not learn numbers.',
  },
  themes: { auto: 'Auto', light: 'Light', dark: 'Dark', outdoor: 'Outdoor' },
  caution: {
    trainingOnly: 'Training only.',
    notAtIncident: 'Do not use at an incident, while responding or while driving.',
    banner: 'TRAINING, NOT AN INCIDENT',
  },
  home: {
    title: 'Read the smoke',
    lead: 'Look at one opening. Say what it does. Then see what was behind the wall.',
    next: 'Next for you',
    nextFirst: 'Your first five scenes',
    nextMore: 'Five new scenes',
    start: 'Start a drill',
    resume: 'Go on with your drill',
  },
  sync: {
    unsynced: (n: number) => (n === 1 ? '1 record not synced' : `${n} records not synced`),
    offline: 'Offline',
    plainHttp:
      'Offline use is off: this page came over plain http, and browsers allow offline copies over https only. Everything works while this page stays open.',
    unsupported: 'Offline use is off: this browser has no service workers.',
    preparing: 'Making a copy for offline use',
    ready: 'This device has everything it needs offline.',
  },
} as const
