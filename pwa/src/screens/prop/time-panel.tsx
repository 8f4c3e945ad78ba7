import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { prop } from '../../words/en/prop'
import type { BenchFire } from './fire'

const speeds = [1, 4, 10] as const

/** Pause, pace, and going back. */
export function TimePanel({ fire, again }: { fire: BenchFire; again(): void }) {
  const { paused, speed } = fire
  return (
    <div class="stack">
      <h2 class="label">{prop.speed}</h2>
      <Choices
        label={prop.speed}
        columns={3}
        choices={speeds.map((value) => ({ value, name: prop.speeds[value]! }))}
        chosen={speed.value}
        choose={(value) => (speed.value = value)}
      />
      <p class="small soft">{prop.speedNote}</p>
      <div class="row">
        <Button onClick={() => (paused.value = !paused.value)}>{paused.value ? prop.goOn : prop.pause}</Button>
        <Button onClick={() => fire.back()}>{prop.back}</Button>
        <Button onClick={again}>{prop.again}</Button>
      </div>
      <p class="small soft">{prop.backNote}</p>
    </div>
  )
}
