import { Choices } from '../../ui/choices'
import { Flows, type FlowChoice } from '../../ui/flow'
import { cannotTell, Levels } from '../../ui/levels'
import { Plane } from '../../ui/plane'
import { HueSwatch } from '../../ui/hue-swatch'
import { words } from '../../words/frame'
import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import { hues, type OrdinalCue } from '../../words/scales'
import { FLAME_SEEN_WORDS, GLASS_SEEN_WORDS, OPENING_STATE_WORDS, type Cue } from '../../wire.gen'
import type { Asked, CueValue } from './looks'

interface CueControlProps {
  which: Asked
  value: CueValue | null | undefined
  /** What was given at the look before. */
  earlier: CueValue | null | undefined
  /** null is "cannot tell"; moveOn opens the next cue. */
  set(value: CueValue | null, moveOn: boolean): void
}

const unsure = 'cannot_tell'

/** The control that fits a cue: arrows, the plane, a rail of swatches, or words. */
export function CueControl({ which, value, earlier, set }: CueControlProps) {
  switch (which) {
    case 'state':
      return (
        <Choices<string>
          label={sizeUp.stands}
          choices={OPENING_STATE_WORDS.map((state) => ({ value: state, name: trade.states[state] }))}
          chosen={value as string | undefined}
          earlier={earlier as string | undefined}
          earlierName={words.app.earlier}
          choose={(state) => set(state, true)}
        />
      )
    case 'flow':
      return (
        <Flows
          chosen={(value === null ? unsure : value) as FlowChoice | undefined}
          earlier={earlier as FlowChoice | undefined}
          choose={(flow) => set(flow === unsure ? null : flow, true)}
        />
      )
    case 'neutral_plane':
      return (
        <Plane
          chosen={value as number | null | undefined}
          earlier={typeof earlier === 'number' ? earlier : undefined}
          choose={(share) => set(share, share === null)}
        />
      )
    case 'volume':
    case 'velocity':
    case 'density':
    case 'darkness':
      return <Rail cue={which} value={value} earlier={earlier} set={set} />
    default:
      return <Words which={which} value={value} earlier={earlier} set={set} />
  }
}

function Rail({ cue, value, earlier, set }: { cue: OrdinalCue } & Omit<CueControlProps, 'which'>) {
  return (
    <Levels
      cue={cue}
      chosen={value === null ? cannotTell : (value as number | undefined)}
      earlier={typeof earlier === 'number' ? earlier : undefined}
      choose={(level) => set(level === cannotTell ? null : level, true)}
    />
  )
}

/** Cues answered in words: yes or no, the hue, the flame, the glass. */
function Words({ which, value, earlier, set }: CueControlProps) {
  const choices = choicesOf(which)
  return (
    <Choices
      label={trade.cues[which as Cue]}
      choices={[...choices, { value: unsure, name: trade.cannotTell }]}
      chosen={value === null ? unsure : value === undefined ? undefined : String(value)}
      earlier={earlier === undefined || earlier === null ? undefined : String(earlier)}
      earlierName={words.app.earlier}
      choose={(chosen) => set(chosen === unsure ? null : meant(which, chosen), true)}
    />
  )
}

function choicesOf(which: Asked) {
  switch (which) {
    case 'colour':
      return hues.map(({ colour, name }) => ({ value: colour as string, name, picture: <HueSwatch colour={colour} /> }))
    case 'flame':
      return FLAME_SEEN_WORDS.map((value) => ({ value: value as string, name: trade.flames[value] }))
    case 'window':
      return GLASS_SEEN_WORDS.map((value) => ({ value: value as string, name: trade.glass[value] }))
    default: {
      const said = sizeUp[which as 'churning' | 'pulsing' | 'vanishes']
      return [
        { value: 'true', name: said.yes },
        { value: 'false', name: said.no },
      ]
    }
  }
}

function meant(which: Asked, chosen: string): CueValue {
  return which === 'churning' || which === 'pulsing' || which === 'vanishes' ? chosen === 'true' : chosen
}
