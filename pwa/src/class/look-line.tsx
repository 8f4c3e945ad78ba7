import { useEffect, useState } from 'preact/hooks'
import { classes } from '../words/class'
import './look-line.css'

interface LookProps {
  /** When the look began and when it ends, in ms of the server's clock; until is 0 where it has no end. */
  from: number
  until: number
  /** The server's clock now. */
  now(): number
}

const everyMS = 250 // how often the line is drawn anew; it moves a pixel or two. Chosen by us

/** The time to look, as a thin line that grows shorter. It never flashes, and no number counts down. */
export function LookLine({ from, until, now }: LookProps) {
  const [at, setAt] = useState(now)
  useEffect(() => {
    setAt(now())
    if (until === 0) return undefined
    const timer = setInterval(() => setAt(now()), everyMS)
    return () => clearInterval(timer)
  }, [from, until])
  if (until === 0) return null
  const left = Math.max(0, Math.min(1, (until - at) / (until - from)))
  const seconds = Math.ceil(Math.max(0, until - at) / 1000)
  return (
    <div class="look-line" role="progressbar" aria-label={classes.look} aria-valuemin={0} aria-valuemax={100} aria-valuenow={Math.round(left * 100)} aria-valuetext={classes.lookLeft(seconds)}>
      <span style={{ transform: `scaleX(${left})` }} />
    </div>
  )
}
