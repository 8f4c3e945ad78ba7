import type { Event, Finding, Item, Verdict } from '../wire.gen'
import { thePlace } from '../words/es/places'
import { inLanguage, type Language } from '../words/language'
import { decimal } from '../words/number'
import { temperature, volume } from '../words/units'
import type { FamilyInfo } from './protocol'

// The engine says everything by key (engine/sentence.go): the id of a sentence in
// the catalogue and what goes into its slots. Here the keys become sentences, in
// the language that was chosen. content/wording does the same on the server.

type Catalogue = Readonly<Record<string, string>>

const catalogues: Record<Language, () => Promise<{ default: Catalogue }>> = {
  en: () => import('../generated/sentences.en.json'),
  es: () => import('../generated/sentences.es.json'),
}

let loading: { language: Language; catalogue: Promise<Catalogue> } | undefined

/** The catalogue of a language, fetched once and only when the engine has something to say. */
export function catalogueOf(language: Language): Promise<Catalogue> {
  if (loading?.language !== language) {
    const catalogue = catalogues[language]().then((module) => module.default)
    loading = { language, catalogue }
    catalogue.catch(() => (loading = undefined)) // the next answer tries again
  }
  return loading!.catalogue
}

/** Puts keys into words. A text that is no key comes back as it is. */
export function say(keys: string, all: Catalogue): string {
  return lines(keys, all).join(' ')
}

/** The same, with what each key says left apart. */
function lines(keys: string, all: Catalogue): string[] {
  return keys.split('\n').map((key) => sentence(key, all))
}

function sentence(key: string, all: Catalogue): string {
  const [ids = '', ...slots] = key.split('|')
  const text = find(ids, all)
  if (text === undefined) return key
  return slots.reduce((said, slot) => {
    const at = slot.indexOf('=')
    return said.replaceAll(`{${slot.slice(0, at)}}`, listed(slot.slice(at + 1), all))
  }, text)
}

/** The first sentence of several ids that the catalogue has. An opening without a name is called by its id. */
function find(ids: string, all: Catalogue): string | undefined {
  for (const id of ids.split('?')) {
    if (all[id] !== undefined) return all[id]
    const [kind = '', rest = ''] = id.split('/')
    if (kind === 'opening') return theOpening(rest)
    if (kind in quantities) return quantities[kind as keyof typeof quantities](Number(rest))
  }
  return undefined
}

/** Words that hold a number of their own, in the units of the page. */
const quantities = { degrees: temperature, litres: volume, number: (value: number) => decimal(value, 1) }

const theOpening = (id: string) => inLanguage(`the ${id.replaceAll('_', ' ')}`, thePlace(id))

function listed(values: string, all: Catalogue): string {
  const words = values.split(',').map((value) => (value.startsWith('@') && find(value.slice(1), all)) || value)
  return words.reduce((said, value, n) => {
    const joint = all[n === words.length - 1 ? 'list/and' : 'list/comma'] ?? '{a}, {b}'
    return joint.replace('{a}', () => said).replace('{b}', () => value)
  })
}

/** What the engine answers, with its keys put into words. */
export const dress = {
  families: (list: FamilyInfo[], all: Catalogue): FamilyInfo[] =>
    list.map((family) => ({ ...family, title: say(family.title, all) })),

  events: (list: Event[], all: Catalogue): Event[] =>
    list.map((event) => ({ ...event, kind: say(`event/${event.kind}`, all), cause: say(event.cause, all) })),

  item: (item: Item, all: Catalogue): Item => ({
    ...item,
    title: say(item.title, all),
    question: {
      ...item.question,
      text: say(item.question.text, all),
      asks: item.question.asks.map((ask) => ({ ...ask, text: say(ask.text, all) })),
    },
  }),

  score: (verdict: Verdict, all: Catalogue): Verdict => ({
    ...verdict,
    parts: verdict.parts.map((part) => ({ ...part, remark: say(part.remark, all) })),
    why: lines(verdict.why, all).join('\n'), // a line for each question
    rule: say(verdict.rule, all),
    source: say(verdict.source, all),
    tell: say(verdict.tell, all),
  }),

  read: (finding: Finding, all: Catalogue): Finding => {
    const reasons = (list: Finding['because']) =>
      list.map((reason) => ({ ...reason, text: say(reason.text, all), source: say(reason.source, all) }))
    return {
      ...finding,
      ...(finding.path_note !== undefined && { path_note: say(finding.path_note, all) }),
      hazards: finding.hazards.map((hazard) => ({ ...hazard, conditions: hazard.conditions.map((one) => say(one, all)) })),
      because: reasons(finding.because),
      against: reasons(finding.against),
      cautions: finding.cautions.map((one) => say(one, all)),
    }
  },
}
