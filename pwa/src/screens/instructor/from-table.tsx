import { useId, useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { desk } from '../../words/class-desk'

/** A roster from a table: a file, or lines pasted in. The server reads it, and names the line that is wrong. */
export function FromTable({ ready, failed, make }: { ready: boolean; failed: string | undefined; make(csv: string): void }) {
  const [csv, setCsv] = useState('')
  const id = useId()
  const read = async (file: File | undefined) => setCsv((await file?.text()) ?? '')
  return (
    <section class="stack">
      <h2>{desk.csv}</h2>
      <p class="small soft">{desk.csvWhy}</p>
      <label class="desk-file">
        <span class="label">{desk.csvFile}</span>
        <input type="file" accept=".csv,text/csv,text/plain" onChange={(event) => void read(event.currentTarget.files?.[0])} />
      </label>
      <label class="label" for={id}>
        {desk.csvText}
      </label>
      <textarea id={id} class="desk-text" rows={8} value={csv} spellcheck={false} onInput={(event) => setCsv(event.currentTarget.value)} />
      {failed && <p role="alert">{failed}</p>}
      <Button wide disabled={!ready || csv.trim() === ''} onClick={() => make(csv)}>
        {desk.csvNow}
      </Button>
    </section>
  )
}
