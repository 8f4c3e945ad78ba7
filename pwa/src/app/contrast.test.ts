import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'

// The contrast that style promises, worked out from tokens.css itself by the
// formula of WCAG 2.2 ("relative luminance" and "contrast ratio").

const css = readFileSync(new URL('tokens.css', import.meta.url), 'utf8')

const light = colours(':root {')
const themes = {
  light,
  dark: { ...light, ...colours(":root[data-theme='dark'] {") },
  outdoor: { ...light, ...colours(":root[data-theme='outdoor'] {") },
}

describe.each(Object.entries(themes))('%s', (_name, theme) => {
  test.each([
    ['ink', 'paper', 15],
    ['ink', 'panel', 15],
    ['ink', 'warn-wash', 11],
    ['ink-soft', 'paper', 5],
    ['ink-soft', 'panel', 5],
    ['accent', 'paper', 5],
    ['accent', 'panel', 5],
    ['accent-ink', 'accent', 5],
    ['warn', 'paper', 5],
  ])('%s on %s is at least %i to 1', (front, back, least) => {
    expect(contrast(theme[front]!, theme[back]!)).toBeGreaterThanOrEqual(least)
  })
})

function colours(selector: string): Record<string, string> {
  const block = css.slice(css.indexOf(selector), css.indexOf('}', css.indexOf(selector)))
  return Object.fromEntries([...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6})/g)].map(([, name, hex]) => [name, hex]))
}

function contrast(a: string, b: string): number {
  const [bright, dim] = [luminance(a), luminance(b)].toSorted((x, y) => y - x) as [number, number]
  return (bright + 0.05) / (dim + 0.05)
}

function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => linear(parseInt(hex.slice(at, at + 2), 16) / 255)) as [number, number, number]
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

function linear(channel: number): number {
  return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4
}
