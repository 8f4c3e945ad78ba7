import type { ClassAskSpread, Reply } from '../wire.gen'

/** One's own answer on a shared rail; the name is told where two share a phone. */
export interface Own {
  name: string
  reply: Reply
}

export interface SpreadProps {
  said: ClassAskSpread
  /** What the question is about, for whoever hears the plot. */
  name: string
  own?: readonly Own[]
}

export function Told({ name, said }: { name: string; said: string }) {
  return (
    <div>
      <dt class="label">{name}</dt>
      <dd>{said}</dd>
    </div>
  )
}

export const percent = (share: number) => `${Math.round(share * 1000) / 10}%`

/** Dots that would lie on each other stand beside each other; so many places there are along the plot. */
export function stacked(shares: readonly number[], places: number): { share: number; at: number }[] {
  const rows = new Map<number, number>()
  return shares.map((share) => {
    const row = Math.round(share * places)
    const at = rows.get(row) ?? 0
    rows.set(row, at + 1)
    return { share, at }
  })
}
