import { hydrate, render } from 'preact'
import './app/tokens.css'
import './app/base.css'
import { App } from './app/app'
import { makeGood } from './app/early'
import { followLinks } from './app/router'
import { followTheme } from './app/theme'
import { language } from './words/language'

followTheme()
followLinks()
// The page comes with Home in English written into it (build/first-screen.ts).
const root = document.getElementById('app')!
document.documentElement.lang = language
if (root.firstChild && language === 'en') {
  setTimeout(() => { // a task of its own: read and run in one, they would hold up a tap on a slow phone
    hydrate(<App />, root)
    makeGood()
  })
} else {
  root.replaceChildren()
  render(<App />, root)
  makeGood()
}

// What the first screen does not need comes after it has been painted.
requestAnimationFrame(() => setTimeout(() => void import('./app/after-paint').then((after) => after.start()), 0))
