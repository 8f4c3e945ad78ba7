import { expect, test } from 'vitest'
import { desk } from '../../words/class-desk'
import { tableText } from './table-text'

const text = 'call_sign;personnel\r\nPingüino;7\r\n'

function utf16(from: string, little: boolean): Uint8Array<ArrayBuffer> {
  const view = new DataView(new ArrayBuffer(from.length * 2))
  for (let at = 0; at < from.length; at++) view.setUint16(at * 2, from.charCodeAt(at), little)
  return new Uint8Array(view.buffer)
}

test('a table is read in whatever coding a spreadsheet saved it', () => {
  const western = Uint8Array.from(text, (letter) => letter.charCodeAt(0)) // its letters stand at the same numbers there
  for (const bytes of [new TextEncoder().encode(text), new TextEncoder().encode(`\ufeff${text}`), western, utf16(`\ufeff${text}`, true), utf16(`\ufeff${text}`, false)]) {
    expect(tableText(new Uint8Array(bytes))).toBe(text)
  }
})

test('a workbook, and what is too large for a roster, are told as such and not shown as letters', () => {
  expect(() => tableText(Uint8Array.of(0x50, 0x4b, 0x03, 0x04, 0))).toThrow(desk.csvWorkbook)
  expect(() => tableText(Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0))).toThrow(desk.csvWorkbook)
  expect(() => tableText(new Uint8Array(600 * 1024))).toThrow(desk.csvTooLarge)
})
