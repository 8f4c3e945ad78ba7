import { useState } from 'preact/hooks'
import { WithItem } from '../../class/with-item'
import { Button } from '../../ui/button'
import { TextField } from '../../ui/text-field'
import { board } from '../../words/class-board'
import type { ClassBoardView, Item, Reply } from '../../wire.gen'
import { asksConfidence } from '../drill/answering'
import { AskControl } from '../drill/ask-control'
import { Confidence } from '../drill/confidence'
import { askName } from '../../words/spell-reply'
import type { Lead } from './lead'
import { PickScene } from './pick-scene'

/** Types in what someone put on a printed sheet: it counts as theirs. */
export function Sheet({ view, lead }: { view: ClassBoardView; lead: Lead }) {
  const [person, setPerson] = useState('')
  const [callSign, setCallSign] = useState('')
  const [scene, setScene] = useState(view.scene?.id ?? view.scenes[0]?.id ?? '')
  const [kept, setKept] = useState<string>()
  const shown = view.scenes.find(({ id }) => id === scene)
  const due = view.people.filter((one) => !one.removed && !one.committed.includes(scene))
  const whose = due.find((one) => String(one.person) === person)
  const name = whose?.call_sign ?? callSign.trim()
  const send = async (replies: Reply[], confidence?: number) => {
    const from = whose ? { person: whose.person } : { call_sign: name }
    if (await lead.do({ kind: 'sheet', ...from, scene, replies, ...(confidence !== undefined && { confidence }) })) {
      setKept(name)
      setPerson('')
      setCallSign('')
    }
  }
  return (
    <div class="stack">
      {kept && <p role="status">{board.sheetKept(kept)}</p>}
      <PickScene label={board.sheetScene} scenes={view.scenes} at={scene} choose={setScene} />
      <label class="board-pick">
        <span class="label">{board.sheetWho}</span>
        <select value={person} onChange={(event) => setPerson(event.currentTarget.value)}>
          <option value="">{board.sheetNew}</option>
          {due.map((one) => (
            <option key={one.person} value={String(one.person)}>
              {one.call_sign}
            </option>
          ))}
        </select>
      </label>
      {!whose && <TextField label={board.rename} value={callSign} set={setCallSign} most={32} />}
      {shown && <WithItem shown={shown}>{(item) => <Boxes key={`${scene} ${kept} ${person}`} item={item} ready={name !== ''} send={send} />}</WithItem>}
      {lead.failed.value && <p role="alert">{lead.failed.value}</p>}
    </div>
  )
}

interface BoxesProps {
  item: Item
  ready: boolean
  send(replies: Reply[], confidence?: number): Promise<void>
}

/** How sure someone was may have been left blank on paper. */
function Boxes({ item, ready, send }: BoxesProps) {
  const [replies, setReplies] = useState<Reply[]>([])
  const [confidence, setConfidence] = useState<number>()
  const { asks } = item.question
  if (item.kind === 'call_out') return <p>{board.sheetNotThis}</p>
  const answer = (reply: Reply) => setReplies([...replies.filter(({ ask }) => ask !== reply.ask), reply])
  return (
    <div class="stack stack-wide">
      {asks.map((ask) => (
        <section key={ask.id} class="stack">
          <h3>{askName(ask, asks)}</h3>
          <AskControl ask={ask} show={item.show} given={replies.find((one) => one.ask === ask.id)} answer={answer} />
        </section>
      ))}
      {asksConfidence(item, replies) && <Confidence item={item} chosen={confidence} choose={setConfidence} />}
      <Button look="main" wide disabled={!ready || replies.length < asks.length} onClick={() => void send(replies, confidence)}>
        {board.sheetIn}
      </Button>
    </div>
  )
}
