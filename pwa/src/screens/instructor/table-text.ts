import { desk } from '../../words/class-desk'

// What a spreadsheet saves is text in one of a few codings, and which one it does
// not say, or says in its first two bytes.

const largest = 512 * 1024 // bytes; 500 people of 64 characters come to a sixteenth of it

/** A file that is no table. Its message is for a person. */
export class NoTable extends Error {}

/** The text of a table: UTF-16 by its mark, UTF-8, or else the coding of western desktops. */
export function tableText(bytes: Uint8Array<ArrayBuffer>): string {
  if (bytes.length > largest) throw new NoTable(desk.csvTooLarge)
  if (isWorkbook(bytes)) throw new NoTable(desk.csvWorkbook)
  const marked = codingByMark(bytes)
  if (marked) return new TextDecoder(marked).decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

function codingByMark([first, second]: Uint8Array): string | undefined {
  if (first === 0xff && second === 0xfe) return 'utf-16le'
  return first === 0xfe && second === 0xff ? 'utf-16be' : undefined
}

/** Workbooks begin as zip archives do, or as the compound files before them (from memory, to be confirmed). */
function isWorkbook(bytes: Uint8Array): boolean {
  const begins = (...mark: number[]) => mark.every((byte, at) => bytes[at] === byte)
  return begins(0x50, 0x4b, 0x03, 0x04) || begins(0xd0, 0xcf, 0x11, 0xe0)
}
