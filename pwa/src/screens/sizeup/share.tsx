import { useState } from 'preact/hooks'
import { store } from '../../local/store'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { sizeUp } from '../../words/size-up'
import { radioReport } from './report'
import { finding, look, sketch } from './state'

/** The reading as an initial radio report, to copy or send. */
export function Share() {
  const [text, setText] = useState<string>()
  const open = async () => {
    const [drawn, now, read] = [sketch.value, look.value, finding.value]
    if (!drawn || !now || !read) return
    const { callSign } = await (await store()).journal.self()
    setText(radioReport(callSign, drawn, now, read))
  }
  return (
    <>
      <Button onClick={() => void open()}>{sizeUp.share}</Button>
      {text !== undefined && <Report text={text} close={() => setText(undefined)} />}
    </>
  )
}

function Report({ text, close }: { text: string; close(): void }) {
  const [copied, setCopied] = useState(false)
  // Neither is there on plain http; the text can still be marked and copied by hand.
  const copy = navigator.clipboard && (() => navigator.clipboard.writeText(text).then(() => setCopied(true)))
  const send = typeof navigator.share === 'function' && (() => navigator.share({ text }).catch(() => {}))
  return (
    <Dialog title={sizeUp.reportTitle} close={close}>
      <textarea class="report" readOnly rows={14} aria-label={sizeUp.reportTitle}>
        {text}
      </textarea>
      <div class="row">
        {copy && <Button onClick={() => void copy()}>{copied ? sizeUp.copied : sizeUp.copy}</Button>}
        {send && <Button onClick={() => void send()}>{sizeUp.send}</Button>}
      </div>
    </Dialog>
  )
}
