import { expect, test } from 'vitest'
import { desk as english } from '../../words/en/class-desk'
import { desk as spanish } from '../../words/es/class-desk'
import { spellDeed } from './deed'

const deed = (by: string, did: string, what: string) => ({ seq: 1, at_ms: 0, by, did, what })

test('a deed is told in the language of the page, its details too', () => {
  const told: [by: string, did: string, what: string, en: string, es: string][] = [
    ['Gannet', 'sign_in', 'pass phrase', 'Gannet · signed in · by pass phrase', 'Gannet · entró · con la frase de paso'],
    ['Gannet', 'invite', 'chief', 'Gannet · invited · Chief', 'Gannet · invitó · Jefe'],
    ['console', 'reset', 'Knot', 'the console · printed a code for a new pass phrase · Knot', 'la consola · imprimió un código para otra frase de paso · Knot'],
    ['phone of Knot', 'claim', 'Knot', 'the phone of Knot · claimed a place · Knot', 'el teléfono de Knot · ocupó un lugar · Knot'],
    ['Gannet', 'instructor', 'Knot: chief, shut out', 'Gannet · changed an instructor · Knot: Chief, shut out', 'Gannet · cambió a un instructor · Knot: Jefe, sin acceso'],
    ['Gannet', 'sheet', 'Tuesday, person 3', 'Gannet · typed in a paper sheet · Tuesday, person 3', 'Gannet · pasó una hoja de papel · Tuesday, persona 3'],
    ['Gannet', 'disagreed', 'Tuesday, s2 level:volume@door', 'Gannet · disagreed with a key, or no longer · Tuesday, scene 2', 'Gannet · disintió de una clave, o dejó de hacerlo · Tuesday, escena 2'],
  ]
  for (const [by, did, what, en, es] of told) {
    expect(spellDeed(deed(by, did, what), english)).toBe(en)
    expect(spellDeed(deed(by, did, what), spanish as typeof english)).toBe(es)
  }
})

test('what a person named stays as it was named, whatever it looks like', () => {
  expect(spellDeed(deed('Gannet', 'new_set', 'Doors, person 3'), english)).toBe('Gannet · made a set of scenes · Doors, person 3')
  expect(spellDeed(deed('Gannet', 'new_roster', 'chief'), spanish as typeof english)).toBe('Gannet · hizo una lista · chief')
  expect(spellDeed(deed('server', 'longer_code', 'codes were being guessed'), spanish as typeof english)).toContain('se estaban adivinando códigos')
  expect(spellDeed(deed('phone', 'erase', 'a device, at its owner\'s wish'), spanish as typeof english)).toContain('un dispositivo, como quiso su dueño')
  expect(spellDeed(deed('Gannet', 'new_phrase', 'other sign-ins ended'), spanish as typeof english)).toContain('las demás entradas terminaron')
  expect(spellDeed(deed('Gannet', 'of tomorrow', 'x'), english)).toBe('Gannet · of tomorrow · x')
})
