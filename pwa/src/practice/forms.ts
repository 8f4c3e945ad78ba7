import type { FormKind, Scene } from '../wire.gen'
import { FORM_KIND_WORDS } from '../wire.gen'
import { engine } from '../worker/client'
import type { Answered } from './record'

/** The scenes of each test form of a device. */
export async function formsOf(device: string): Promise<Record<FormKind, Scene[]>> {
  const all = await Promise.all(FORM_KIND_WORDS.map(async (form) => [form, await engine.form(form, device)] as const))
  return Object.fromEntries(all) as Record<FormKind, Scene[]>
}

/** The scenes of a form that were never answered: a test asks of none twice, for who has seen it knows it. */
export function unseen(scenes: readonly Scene[], answers: readonly Answered[]): Scene[] {
  const seen = new Set(answers.map(({ answer: { family, seed } }) => `${family} ${seed}`))
  return scenes.filter(({ family, seed }) => !seen.has(`${family} ${seed}`))
}
