import { words } from '../words/frame'
import { trade } from '../words/trade'
import { scale, type OrdinalCue } from '../words/scales'
import { capital } from '../words/sentence'
import { Choices, type Choice } from './choices'
import { Swatch } from './swatch'

/** A level, or -1 for "cannot tell". */
export type Level = number
export const cannotTell = -1

interface LevelsProps {
  cue: OrdinalCue
  chosen: Level | undefined
  choose(level: Level): void
  earlier?: Level | undefined
}

/** The rail of one ordinal cue: five moving swatches and "cannot tell". */
export function Levels({ cue, chosen, choose, earlier }: LevelsProps) {
  const { title, levels } = scale(cue)
  const choices: Choice<number>[] = levels.map(({ level, name }) => ({
    value: level,
    name: capital(name),
    picture: <Swatch cue={cue} level={level} />,
  }))
  choices.push({ value: cannotTell, name: trade.cannotTell })
  const looks = levels.find(({ level }) => level === chosen)?.looks
  return (
    <div class="stack">
      <Choices
        label={title}
        choices={choices}
        chosen={chosen}
        choose={choose}
        earlier={earlier}
        earlierName={words.app.earlier}
      />
      <p class="small soft" aria-live="polite">
        {looks ?? ' '}
      </p>
    </div>
  )
}
