import { takeUpdate, updateWaits } from '../../sw/update'
import { Button } from '../../ui/button'
import { Page } from '../../ui/page'
import { classes } from '../../words/class'
import { Leave } from './leave'

interface Versions {
  engine: string
  content: string
}

/** A class runs on one version: the same seed must be the same fire on every phone. */
export function UpdateFirst({ theirs, ours }: { theirs: Versions; ours: Versions }) {
  return (
    <Page title={classes.updateFirst}>
      <div class="stack stack-wide">
        <p role="alert">{classes.updateWhy(spell(theirs), spell(ours))}</p>
        <Button look="main" wide onClick={() => void update()}>
          {classes.updateNow}
        </Button>
        <Leave />
      </div>
    </Page>
  )
}

const spell = ({ engine, content }: Versions) => `${engine} / ${content}`

/** Takes the version that waits, or looks for one and loads the page anew. */
async function update(): Promise<void> {
  if (updateWaits.value) return takeUpdate()
  await navigator.serviceWorker?.getRegistration().then((found) => found?.update())
  location.reload()
}
