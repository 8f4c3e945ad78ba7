import { useState } from 'preact/hooks'
import { burning } from '../../../words/burning'
import type { Note } from './record'
import { TextField } from '../../../ui/text-field'

const points = Object.keys(burning.checks)

/** The checklist, signed before the log starts. */
export function Before({ start }: { start(note: Note): Promise<void> }) {
  const [checked, setChecked] = useState<ReadonlySet<string>>(new Set())
  const [signed, sign] = useState('')
  const [stopWord, setStopWord] = useState('')
  const [tried, setTried] = useState(false)
  const open = points.length - checked.size
  const ready = open === 0 && signed.trim() !== '' && stopWord.trim() !== ''
  const toggle = (point: string) => setChecked((old) => new Set(old.has(point) ? [...old].filter((one) => one !== point) : [...old, point]))
  return (
    <form
      class="burn burn-before stack"
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        if (ready) void start({ what: 'begin', checks: points, signed: signed.trim(), stop_word: stopWord.trim() })
      }}
    >
      <p>{burning.idea}</p>
      <p class="prop-warning" role="note"><strong>{burning.noPlastics}</strong></p>
      <h2>{burning.before}</h2>
      <p class="soft">{burning.beforeNote}</p>
      <ul class="burn-checks">
        {points.map((point) => (
          <li key={point}>
            <label>
              <input type="checkbox" checked={checked.has(point)} onChange={() => toggle(point)} />
              <span>{burning.checks[point]}</span>
            </label>
          </li>
        ))}
      </ul>
      <p class="burn-permission"><strong>{burning.notPermission}</strong></p>
      <div class="stack burn-signed">
        <TextField label={burning.stopWord} value={stopWord} set={setStopWord} most={40} />
        <TextField label={burning.sign} value={signed} set={sign} hint={burning.signHint} most={40} />
        {tried && !ready && <p role="alert">{open > 0 ? burning.missing(open) : burning.signMissing}</p>}
        <button type="submit" class="button button-main button-wide">{burning.start}</button>
      </div>
    </form>
  )
}
