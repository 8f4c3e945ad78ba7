import type { Deed, InstructorRole } from '../../wire.gen'
import { desk } from '../../words/class-desk'

// The record of who did what is kept in the server's words: names and titles as
// they were given, the rest from a few of its own, which the pages say in theirs.

type Words = Pick<typeof desk, 'deedBy' | 'deedPhone' | 'deedDetails' | 'deedPerson' | 'deedScene' | 'deeds' | 'roles' | 'shutOut'>

/** One line of the record. What no words are known for stands as the server keeps it. */
export function spellDeed({ by, did, what }: Deed, words: Words = desk): string {
  return [spellBy(by, words), words.deeds[did] ?? did, spellWhat(did, what, words)].filter(Boolean).join(' · ')
}

function spellBy(by: string, words: Words): string {
  const [, owner] = /^phone of (.+)$/.exec(by) ?? []
  return owner ? words.deedPhone(owner) : (words.deedBy[by] ?? by)
}

/** The acts of a class that say whom they were about, by number. */
const ofPerson = new Set(['renamed', 'removed', 'sheet'])
/** What gave somebody a role, and what the server tells in words of its own; all else is of what a person named. */
const ofRole = new Set(['set_up', 'invite', 'accept'])
const ofServer = new Set(['sign_in', 'new_phrase', 'longer_code', 'erase'])

function spellWhat(did: string, what: string, words: Words): string {
  if (did === 'instructor') return spellChange(what, words)
  if (did === 'disagreed') return what.replace(/^(.*), s(\d+) \S+$/, (_, title: string, scene: string) => words.deedScene(title, Number(scene)))
  if (ofPerson.has(did)) return what.replace(/^(.*), person (\d+)$/, (_, title: string, person: string) => words.deedPerson(title, Number(person)))
  if (ofRole.has(did)) return words.roles[what as InstructorRole] ?? what
  return (ofServer.has(did) ? words.deedDetails[what] : undefined) ?? what
}

/** An instructor whose role was changed, or who was shut out. */
function spellChange(what: string, words: Words): string {
  const [, name, role, out] = /^(.*): (instructor|chief)(, shut out)?$/.exec(what) ?? []
  if (!name) return what
  return `${name}: ${[words.roles[role as InstructorRole], out && words.shutOut].filter(Boolean).join(', ')}`
}
