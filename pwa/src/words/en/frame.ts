// What the frame and the shared parts say. Every sentence that a person reads
// stands in words/LANGUAGE: what each screen says in a file of its own, so that
// the first screen does not wait for the words of the others. A function stands
// where a number or a name goes into the sentence. words/NAME.ts gives the
// catalogue in the language of the page.

const screens = {
  sizeUp: { name: 'Size-up', job: 'Rate what shows at each opening and get a reading with its reasons.' },
  prop: { name: 'Prop', job: 'Light the small box, open and shut it, and watch the smoke answer.' },
  drill: { name: 'Drill', job: 'Short sets of scenes. Commit first, then the walls are drawn away.' },
  class: { name: 'Class', job: 'Join a class, or lead one: the same scene for everybody, and who saw what.' },
  book: { name: 'Field book', job: 'Lessons, words, cautions and sources.' },
  log: { name: 'Log', job: 'How your eye is doing, cue by cue. Your own record.' },
}

export type ScreenName = keyof typeof screens

export const words = {
  screens,
  app: {
    name: 'Lintel',
    home: 'Lintel, to Home',
    nav: 'Screens',
    skip: 'Skip to the content',
    theme: 'Colours',
    /** A call sign until its owner chooses one. */
    newcomer: (letters: string) => `Trainee ${letters}`,
    close: 'Close',
    back: 'Back',
    earlier: 'Last look',
    truth: 'It was',
    yours: 'You',
    notSet: 'Not set',
    flowHint: 'In each drawing the shaded side is inside.',
    planeHint: 'Drag or tap where the smoke ends and the air begins',
    higher: 'Higher',
    lower: 'Lower',
    tryAgain: 'Try again',
    backHome: 'Back to Home',
    noSuchPlace: 'There is nothing at this address',
    stopped: 'This screen stopped',
    stoppedWhy: 'Something on it went wrong. What you committed before is kept on this device.',
    notLoaded: 'This screen could not be loaded',
    notLoadedWhy: 'It was not on this device yet, and the server could not be reached.',
    updateReady: 'A new version is on this device.',
    updateNow: 'Use it now',
    /** Why the engine did not start. */
    unstarted: {
      not_here: 'The engine is not on this device yet, and the server could not be reached. Connect once, then try again.',
      no_webassembly: 'This browser has no WebAssembly and cannot run the engine. Use a newer one; the Field book can be read here all the same.',
    },
    notValidated: 'Model not yet validated',
    notValidatedWhy: (held: number, all: number) =>
      `The fire model is held against published measurements of real fires. ${held} of the ${all} lines that it must pass hold today, so it is not yet validated. Learn cause and effect from it; do not learn numbers.`,
  },
  plainSources: {
    common_practice: 'Common practice (no source)',
    from_memory: 'From memory, to be confirmed',
    chosen_by_us: 'Chosen by us',
  } as Record<string, string>,
  themes: { auto: 'Auto', light: 'Light', dark: 'Dark', outdoor: 'Outdoor' },
  caution: {
    trainingOnly: 'Training only.',
    notAtIncident: 'Do not use at an incident, while responding or while driving.',
    banner: 'TRAINING, NOT AN INCIDENT',
    name: 'Cautions',
    more: (n: number) => (n === 1 ? 'One more caution' : `${n} more cautions`),
  },
  home: {
    title: 'Start at the opening',
    lead: 'Look at one opening. Say what it does. Then see what was behind the wall.',
    next: 'Next for you',
    fresh: 'A set of new scenes',
    due: (n: number) => (n === 1 ? '1 kind of scene is due again' : `${n} kinds of scene are due again`),
    resume: (at: number, of: number) => `Go on with scene ${at} of ${of}`,
  },
  sync: {
    unsynced: (n: number) => (n === 1 ? '1 record not synced' : `${n} records not synced`),
    offline: 'Offline',
    plainHttp:
      'Offline use is off: this page came over plain http, and browsers allow offline copies over https only. Everything works while this page stays open.',
    unsupported: 'Offline use is off: this browser has no service workers.',
    preparing: 'Making a copy for offline use',
    ready: 'This device has everything it needs offline.',
    keepsNothing: 'This browser keeps nothing: it may be a private window, or storage is turned off. What is done here can be seen, but is gone when the page closes, and no record is made.',
  },
} as const
