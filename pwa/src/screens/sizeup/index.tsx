import { useEffect } from 'preact/hooks'
import { useSignal, useSignalEffect } from '@preact/signals'
import { busy } from '../../sw/update'
import { Caution } from '../../ui/caution'
import { Page } from '../../ui/page'
import { StandingCautions } from '../../ui/standing-cautions'
import { Tabs } from '../../ui/tabs'
import { sizeUp } from '../../words/size-up'
import { words } from '../../words/frame'
import { BuildingTab } from './building-tab'
import { LookTab } from './look-tab'
import { ReadingTab } from './reading-tab'
import { follow, rated, restore, restored, sketch, tab, type Tab } from './state'
import './sizeup.css'

const wide = matchMedia('(min-width: 900px)')

/** Size-up: a building, what shows at its openings, and what that is consistent with. */
export default function SizeUp() {
  const besides = useSignal(wide.matches)
  useEffect(() => {
    const watch = () => (besides.value = wide.matches)
    wide.addEventListener('change', watch)
    void restore()
    const stop = follow()
    return () => {
      wide.removeEventListener('change', watch)
      stop()
      busy.value = false
    }
  }, [besides])
  useSignalEffect(() => void (busy.value = sketch.value !== undefined))

  return (
    <Page title={words.screens.sizeUp.name} caution={<Caution />} wide>
      {sketch.value && (
        <Tabs<Tab>
          label={sizeUp.views}
          panel="size-up-panel"
          chosen={tab.value}
          choose={(next) => (tab.value = next)}
          tabs={[
            { id: 'building', name: sizeUp.tabs.building },
            { id: 'look', name: sizeUp.tabs.look },
            { id: 'reading', name: sizeUp.tabs.reading },
          ]}
        />
      )}
      <div id="size-up-panel" role={sketch.value ? 'tabpanel' : undefined}>
        {shown(besides.value)}
      </div>
      {restored.value && <StandingCautions at={tab.value === 'reading' ? 'reading' : 'size_up'} /> /* with what stands above them: they would be pushed down */}
    </Page>
  )
}

/** On a wide screen the reading stands beside the look, and is seen as it is built. */
function shown(besides: boolean) {
  if (!restored.value) return null
  if (tab.value === 'building' || !sketch.value) return <BuildingTab />
  if (tab.value === 'reading') return <ReadingTab />
  if (!besides) return <LookTab />
  return (
    <div class="look-and-reading">
      <LookTab />
      <div>{rated.value > 0 ? <ReadingTab /> : <p class="soft">{sizeUp.nothingYet}</p>}</div>
    </div>
  )
}
