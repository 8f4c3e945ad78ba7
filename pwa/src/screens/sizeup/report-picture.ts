// The report as a picture to send on: the same sentences, between two bars that
// say what it is. Drawn in the colours of paper whatever the theme, so that it
// reads alike wherever it arrives.

const width = 1080 // px: what phones send without making it smaller, chosen by us
const margin = 64
const bar = 96
const size = 38
const step = 1.42 * size
const paper = { back: '#fbf8f1', ink: '#15130f', warn: '#f7e3c5', edge: '#8c2f00' }
const font = (weight: number, px: number) => `${weight} ${px}px system-ui, sans-serif`

/** What measures a text: a canvas, or in a test anything else. */
export type Measure = (text: string) => number

/** A text broken into lines no wider than `most`, at its spaces; a longer word keeps a line of its own. */
export function broken(text: string, most: number, measure: Measure): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const longer = lines.length ? `${lines.at(-1)} ${word}` : word
    if (lines.length && measure(longer) <= most) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  return lines
}

/** The report as a PNG file. Its first and last line are the training banner, and stand on the bars. */
export async function reportPicture(report: string): Promise<File> {
  const [banner = '', ...rest] = report.split('\n')
  const canvas = document.createElement('canvas')
  const pen = canvas.getContext('2d')!
  pen.font = font(400, size)
  const lines = rest.slice(0, -1).map((line) => broken(line, width - 2 * margin, (text) => pen.measureText(text).width))
  const height = 2 * bar + margin + lines.reduce((sum, one) => sum + one.length * step + 0.4 * step, 0) + margin
  canvas.width = width
  canvas.height = Math.ceil(height)
  draw(pen, banner, lines, canvas.height)
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'))
  if (!blob) throw new Error('the browser made no picture')
  return new File([blob], 'lintel-size-up.png', { type: 'image/png' })
}

function draw(pen: CanvasRenderingContext2D, banner: string, lines: string[][], height: number): void {
  pen.fillStyle = paper.back
  pen.fillRect(0, 0, width, height)
  for (const y of [0, height - bar]) {
    pen.fillStyle = paper.warn
    pen.fillRect(0, y, width, bar)
    pen.fillStyle = paper.edge
    pen.fillRect(0, y, 16, bar)
    pen.font = font(700, size)
    pen.fillText(banner, margin, y + bar / 2 + 0.36 * size)
  }
  pen.fillStyle = paper.ink
  let y = bar + margin + 0.5 * size
  lines.forEach((line, k) => {
    pen.font = font(k === 0 ? 640 : 400, size)
    for (const text of line) {
      pen.fillText(text, margin, y)
      y += step
    }
    y += 0.4 * step
  })
}
