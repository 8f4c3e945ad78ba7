import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { words } from '../words/frame'

interface PageProps {
  title: string
  /** Beside the title: a small note or a button. */
  aside?: ComponentChildren
  /** Stays below the title on every part of the screen, e.g. <Caution />. */
  caution?: ComponentChildren
  wide?: boolean
  /** Hides the navigation, while an item is open. */
  alone?: boolean
  children: ComponentChildren
}

/** A screen: its title, which takes the focus on arrival, and its content. */
export function Page({ title, aside, caution, wide, alone, children }: PageProps) {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    document.title = `${title} · ${words.app.name}`
    if (firstPageShown) heading.current?.focus({ preventScroll: true })
    firstPageShown = true
  }, [title])

  return (
    <main id="main" class={`page${wide ? ' page-wide' : ''}${alone ? ' page-alone' : ''}`}>
      <div class="page-title">
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        {aside}
      </div>
      {caution}
      {children}
    </main>
  )
}

/** The first page leaves the focus where the browser put it. */
let firstPageShown = false
