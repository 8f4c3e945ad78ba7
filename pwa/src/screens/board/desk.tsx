import { useEffect, useState } from 'preact/hooks'
import { Steps } from '../../class/steps'
import { Page } from '../../ui/page'
import { Tabs } from '../../ui/tabs'
import { classes } from '../../words/class'
import { board } from '../../words/class-board'
import { Controls } from './controls'
import { Entrance } from './entrance'
import type { DeskProps } from './desk-props'
import { People } from './people'
import { Readings } from './readings'
import { Scenes } from './scenes'

const parts = ['readings', 'people', 'set'] as const
type Part = (typeof parts)[number]
const panelId = (part: Part) => `board-${part}`

/**
 * The board laid out: on a narrow screen in parts, on a wide one side by side. All
 * parts stay, shown or not: turning a tablet closes no dialog and loses nothing
 * that is half written.
 */
export function Desk(props: DeskProps) {
  const { view, away, lead } = props
  const wide = useWide()
  const [part, choose] = useState<Part>('readings')
  const tabs = parts.map((id) => ({ id, name: board[id] }))
  const panel = (id: Part) => (wide ? {} : { id: panelId(id), role: 'tabpanel' as const, 'aria-label': board[id], hidden: id !== part })
  return (
    <Page title={view.title} wide alone aside={<Entrance {...props} />}>
      <div class="board stack">
        <Steps step={view.step} pace={view.pace} />
        {away && (
          <p class="class-away" role="status">
            {board.away}
          </p>
        )}
        {view.rehearsal && <p class="class-away">{classes.rehearsal}</p>}
        <Controls {...props} />
        {lead.failed.value && <p role="alert">{lead.failed.value}</p>}
        {!wide && <Tabs label={board.tabs} tabs={tabs} chosen={part} choose={choose} panel={panelId(part)} />}
        <div class="board-parts">
          <div {...panel('readings')}>
            <Readings {...props} />
          </div>
          <div class="board-beside stack stack-wide">
            <div {...panel('people')}>
              <People {...props} />
            </div>
            <div {...panel('set')}>
              <Scenes {...props} />
            </div>
          </div>
        </div>
      </div>
    </Page>
  )
}

/** Whether there is room to show the parts side by side. */
function useWide(): boolean {
  const [wide, setWide] = useState(() => matchMedia('(min-width: 900px)').matches)
  useEffect(() => {
    const query = matchMedia('(min-width: 900px)')
    const follow = () => setWide(query.matches)
    query.addEventListener('change', follow)
    return () => query.removeEventListener('change', follow)
  }, [])
  return wide
}
