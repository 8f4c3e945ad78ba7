import type { ComponentChildren } from 'preact'
import { words } from '../words/frame'
import { KeepNote } from '../ui/keep-note'
import { Mark } from '../ui/mark'
import { SyncNote } from '../ui/sync-note'
import { UpdateNote } from '../ui/update-note'
import { ThemeButton } from './theme-button'
import { headingFor } from './router'
import { screens } from './screens'
import './frame.css'

/** What stands around every screen: the way home, the way elsewhere, what is not yet synced. */
export function Frame({ children }: { children: ComponentChildren }) {
  return (
    <div class="frame">
      <a class="skip" href="#main">
        {words.app.skip}
      </a>
      <header class="frame-head">
        <a class="frame-home" href="/" aria-label={words.app.home}>
          <Mark />
          <span>{words.app.name}</span>
        </a>
        <SyncNote />
        <ThemeButton />
      </header>
      <Nav />
      <KeepNote />
      {children}
      <UpdateNote />
    </div>
  )
}

function Nav() {
  const here = headingFor.value
  return (
    <nav class="frame-nav" aria-label={words.app.nav}>
      {screens.map(({ name, at }) => (
        <a key={at} href={`/${at}`} aria-current={here === at ? 'page' : undefined}>
          {words.screens[name].name}
        </a>
      ))}
    </nav>
  )
}
