import { locale } from './language'

const formats = new Map<number, Intl.NumberFormat>()

/** A number with so many decimals, its point or comma as the device writes it. Made once: figures change with every frame. */
export function decimal(value: number, digits: number): string {
  let format = formats.get(digits)
  if (!format) {
    format = new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits, useGrouping: false, signDisplay: 'negative' })
    formats.set(digits, format)
  }
  return format.format(value)
}

/** What stands before decimals here. */
export const decimalPoint: string = decimal(0.5, 1).charAt(1)

/** The same with no zeros at its end. */
export const rounded = (value: number, digits: number): string =>
  value.toLocaleString(locale, { maximumFractionDigits: digits, useGrouping: false, signDisplay: 'negative' })
