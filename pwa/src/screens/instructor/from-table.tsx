import { useId, useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { desk } from '../../words/class-desk'
import { NoTable, tableText } from './table-text'

/** A roster from a table: a file, or lines pasted in. The server reads it, and names the line that is wrong. */
export function FromTable({ doing, failed, make }: { doing: boolean; failed: string | undefined; make(csv: string): void }) {
  const [csv, setCsv] = useState('')
  const [unread, setUnread] = useState<string>()
  const id = useId()
  const read = async (file: File | undefined) => {
    if (!file) return
    setUnread(undefined)
    try {
      setCsv(tableText(new Uint8Array(await file.arrayBuffer())))
    } catch (error) {
      setUnread(error instanceof NoTable ? error.message : desk.csvUnread)
    }
  }
  return (
    <section class="stack">
      <h2>{desk.csv}</h2>
      <p class="small soft">{desk.csvWhy}</p>
      <label class="desk-file">
        <span class="label">{desk.csvFile}</span>
        <input
          type="file"
          accept=".csv,text/csv,text/plain"
          onClick={(event) => (event.currentTarget.value = '')} // the same file, mended, can be chosen again
          onChange={(event) => void read(event.currentTarget.files?.[0])}
        />
      </label>
      <label class="label" for={id}>
        {desk.csvText}
      </label>
      <textarea id={id} class="desk-text" rows={8} value={csv} spellcheck={false} onInput={(event) => setCsv(event.currentTarget.value)} />
      {(unread ?? failed) && <p role="alert">{unread ?? failed}</p>}
      <Button wide disabled={doing} onClick={() => make(csv)}>
        {desk.csvNow}
      </Button>
    </section>
  )
}
