import { Choices } from '../../ui/choices'
import { drill } from '../../words/drill'
import type { Item } from '../../wire.gen'

interface ConfidenceProps {
  item: Item
  chosen: number | undefined
  choose(confidence: number): void
}

/** How sure one is of all the choices of an item together. */
export function Confidence({ item, chosen, choose }: ConfidenceProps) {
  return (
    <>
      <h3 class="label">{drill.confidence}</h3>
      {hasEstimates(item) && <p class="small soft">{drill.confidenceOf}</p>}
      <Choices label={drill.confidence} choices={degrees} chosen={chosen} choose={choose} />
    </>
  )
}

/** The confidences that can be given, with their names, the least first. */
export const degrees = Object.entries(drill.sure)
  .map(([value, name]) => ({ value: Number(value), name: `${name} (${Math.round(Number(value) * 100)}\u00a0%)` }))
  .toSorted((a, b) => a.value - b.value)

/** Whether estimates stand beside the choices: how sure one is says nothing of them. */
function hasEstimates({ question }: Item): boolean {
  return question.asks.some(({ choice }) => !choice)
}
