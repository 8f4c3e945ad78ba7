import { screens } from '../../app/screens'
import { LanguageSwitch } from '../../ui/language-switch'
import { OfflineNote } from '../../ui/offline-note'
import { Page } from '../../ui/page'
import { words } from '../../words/frame'
import { Section } from './section'
import './home.css'

/** The way in. It needs no engine and no store: it shows in the first second. */
export function Home() {
  return (
    <Page title={words.home.title}>
      <div class="stack stack-wide">
        <p class="home-lead">{words.home.lead}</p>
        <Section rooms={screens} />
        <p class="small soft">
          {words.caution.trainingOnly} {words.caution.notAtIncident}
        </p>
        <OfflineNote />
        <LanguageSwitch />
      </div>
    </Page>
  )
}
