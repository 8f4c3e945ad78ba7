import { scene as words } from '../words/scene'
import { DAYLIGHTS, type Daylight } from './draw/palette'

/** How near one stands: across the road, before the building, or close to the marked opening. */
export type Distance = 'far' | 'whole' | 'near'

interface ControlsProps {
  distance: Distance
  /** Whether there is a marked opening in sight to come close to. */
  canCome: boolean
  stand(where: Distance): void
  light: Daylight
  shine(light: Daylight): void
}

/** On the picture itself: the light it stands in, and how near one stands. */
export function Controls({ distance, canCome, stand, light, shine }: ControlsProps) {
  const steps: Distance[] = canCome ? ['far', 'whole', 'near'] : ['far', 'whole']
  const at = steps.indexOf(distance)
  const next = DAYLIGHTS[(DAYLIGHTS.indexOf(light) + 1) % DAYLIGHTS.length]!
  return (
    <div class="scene-view" role="group" aria-label={words.view}>
      <button type="button" aria-label={words.lightNow[light]} onClick={() => shine(next)}>
        <Sign path={lamps[light]} />
      </button>
      <button type="button" class="scene-near" aria-label={words.nearer} disabled={at >= steps.length - 1} onClick={() => stand(steps[at + 1]!)}>
        <Sign path="M5 12h14M12 5v14" />
      </button>
      <button type="button" aria-label={words.farther} disabled={at <= 0} onClick={() => stand(steps[at - 1]!)}>
        <Sign path="M5 12h14" />
      </button>
    </div>
  )
}

// A sun above the horizon, on it, and a moon.
const lamps: Record<Daylight, string> = {
  day: 'M12 7.5a4.5 4.5 0 1 1 0 9 4.5 4.5 0 0 1 0-9zM12 1.8v2.6M12 19.6v2.6M1.8 12h2.6M19.6 12h2.6M4.8 4.8l1.8 1.8M17.4 17.4l1.8 1.8M4.8 19.2l1.8-1.8M17.4 6.6l1.8-1.8',
  dusk: 'M2 17h20M6.6 17a5.4 5.4 0 0 1 10.8 0M12 6v2.8M4.6 9.4l2 1.8M19.4 9.4l-2 1.8M7 21h10',
  night: 'M19.5 14.4A8.2 8.2 0 1 1 9.6 4.5a6.6 6.6 0 0 0 9.9 9.9z',
}

function Sign({ path }: { path: string }) {
  return (
    <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true" focusable="false">
      <path d={path} />
    </svg>
  )
}
