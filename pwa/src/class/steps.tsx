import { classes } from '../words/class'
import './steps.css'

const led = ['gather', 'watch', 'commit', 'compare', 'cutaway'] as const
const own = ['gather', 'commit', 'compare', 'cutaway'] as const

type Step = (typeof led)[number] | 'ended'

/** Where a class stands: its steps along a wall line, the present one an opening in it. */
export function Steps({ step, pace }: { step: Step; pace: 'led' | 'self' }) {
  return (
    <ol class="steps" aria-label={classes.stepsOf}>
      {(pace === 'self' ? own : led).map((one) => (
        <li key={one} aria-current={one === step ? 'step' : undefined}>
          {classes.steps[one]}
        </li>
      ))}
    </ol>
  )
}
