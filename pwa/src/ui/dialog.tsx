import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { words } from '../words/frame'
import { Button } from './button'
import './dialog.css'

interface DialogProps {
  title: string
  close(): void
  children: ComponentChildren
}

/** A sheet over the screen. Escape and the close button close it. */
export function Dialog({ title, close, children }: DialogProps) {
  const sheet = useRef<HTMLDialogElement>(null)
  useEffect(() => sheet.current?.showModal(), [])

  return (
    <dialog
      ref={sheet}
      class="dialog"
      aria-label={title}
      onClose={close}
    >
      <div class="dialog-body stack">
        <div class="row spread">
          <h2>{title}</h2>
          <Button look="quiet" onClick={() => sheet.current?.close()}>
            {words.app.close}
          </Button>
        </div>
        {children}
      </div>
    </dialog>
  )
}
