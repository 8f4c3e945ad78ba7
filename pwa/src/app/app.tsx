import { Home } from '../screens/home'
import { words } from '../words/frame'
import { Page } from '../ui/page'
import { Lazy } from './lazy'
import { place } from './router'
import { inner, screens } from './screens'
import { Frame } from './frame'

/** The whole app: the frame around, and the screen that the address names. */
export function App() {
  return (
    <Frame>
      <Shown />
    </Frame>
  )
}

function Shown() {
  const { screen } = place.value
  if (screen === '') return <Home />
  const found = [...screens, ...inner].find(({ at }) => at === screen)
  if (found) return <Lazy key={found.at} load={found.load} />
  return (
    <Page title={words.app.noSuchPlace}>
      <p>
        <a class="lone-link" href="/">{words.app.backHome}</a>
      </p>
    </Page>
  )
}
