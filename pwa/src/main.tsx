import { hydrate, render } from 'preact'
import './app/tokens.css'
import './app/base.css'
import { App } from './app/app'
import { followLinks } from './app/router'
import { followTheme } from './app/theme'

followTheme()
followLinks()
const root = document.getElementById('app')!
if (root.firstChild) hydrate(<App />, root)
else render(<App />, root)

// What the first screen does not need comes after it has been painted.
requestAnimationFrame(() => setTimeout(() => void import('./app/after-paint').then((after) => after.start()), 0))
