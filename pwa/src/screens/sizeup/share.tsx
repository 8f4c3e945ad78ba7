import { useState } from 'preact/hooks'
import { saveFile } from '../../local/save-file'
import { store } from '../../local/store'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { words } from '../../words/frame'
import { sizeUp } from '../../words/size-up'
import { radioReport } from './report'
import { reportPicture } from './report-picture'
import { finding, look, sketch } from './state'

/** The reading as an initial radio report, to copy or send as text or as a picture. */
export function Share() {
  const [text, setText] = useState<string>()
  const open = async () => {
    const [drawn, now, read] = [sketch.value, look.value, finding.value]
    if (!drawn || !now || !read) return
    const callSign = await store()
      .then((opened) => opened.journal.self())
      .then((self) => self.callSign, () => words.app.newcomer(''))
    setText(radioReport(callSign.trim(), drawn, now, read))
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
  const [failed, setFailed] = useState(false)
  // Neither is there on plain http; the text can still be marked and copied by hand.
  const copy = navigator.clipboard && (() => navigator.clipboard.writeText(text).then(() => setCopied(true)))
  const send = typeof navigator.share === 'function' && (() => navigator.share({ text }).catch(() => {}))
  const picture = () => reportPicture(text).then(sendOrKeep).catch(() => setFailed(true))
  return (
    <Dialog title={sizeUp.reportTitle} close={close}>
      <textarea class="report" readOnly rows={14} aria-label={sizeUp.reportTitle}>
        {text}
      </textarea>
      <div class="row">
        {copy && <Button onClick={() => void copy()}>{copied ? sizeUp.copied : sizeUp.copy}</Button>}
        {send && <Button onClick={() => void send()}>{sizeUp.send}</Button>}
        <Button onClick={() => void picture()}>{sizeUp.asPicture}</Button>
      </div>
      {failed && <p role="alert">{sizeUp.noPicture}</p>}
    </Dialog>
  )
}

/** Hands the picture to the device's own sheet; where there is none it is kept as a file. */
async function sendOrKeep(file: File): Promise<void> {
  if (navigator.canShare?.({ files: [file] })) {
    await navigator.share({ files: [file] }).catch((error: unknown) => {
      if (!(error instanceof DOMException && error.name === 'AbortError')) throw error // put away by its owner
    })
    return
  }
  saveFile(file.name, file)
}
