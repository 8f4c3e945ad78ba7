import { report as ask } from '../../class/desk'
import { stopsOf } from '../../class/stops'
import { WithItem } from '../../class/with-item'
import { Button } from '../../ui/button'
import { Page } from '../../ui/page'
import { drill } from '../../words/drill'
import { board } from '../../words/class-board'
import { desk } from '../../words/class-desk'
import type { Ask, Item } from '../../wire.gen'
import { degrees } from '../drill/confidence'
import { useLoaded } from './use-loaded'

/** Prediction sheets for those without a phone: a box for every answer, to be crossed and typed in later. */
export function Sheets({ id }: { id: string }) {
  const { value, failed } = useLoaded(() => ask(id))
  const told = value?.report
  return (
    <Page title={told ? desk.sheetTitle(told.title) : desk.sheets} wide>
      <div class="stack no-print">
        {failed && <p role="alert">{failed}</p>}
        <p>{desk.sheetsWhy}</p>
        <div>
          <Button look="main" onClick={() => print()}>
            {desk.print}
          </Button>
        </div>
      </div>
      <div class="sheet">
        <p class="sheet-who">{desk.sheetCallSign}</p>
        {told?.scenes.map((scene) => (
          <section key={scene.id} class="sheet-scene">
            <h2>{board.numbered(scene.number, scene.title)}</h2>
            <WithItem shown={scene}>{(item) => <Boxes item={item} />}</WithItem>
          </section>
        ))}
        <p class="small">{desk.sheetFoot}</p>
      </div>
    </Page>
  )
}

function Boxes({ item }: { item: Item }) {
  if (item.kind === 'call_out') return <p>{board.sheetNotThis}</p>
  return (
    <>
      <p>{item.question.text}</p>
      {item.question.asks.map((asked) => (
        <div key={asked.id} class="sheet-ask">
          <h3>{asked.text}</h3>
          {asked.kind === 'plane' ? <p>{desk.sheetPlane}</p> : null}
          <Answers asked={asked} item={item} />
        </div>
      ))}
      {item.question.asks.some(({ choice }) => choice) && (
        <div class="sheet-ask">
          <h3>{drill.confidence}</h3>
          <ul class="sheet-boxes">
            {degrees.map(({ value, name }) => (
              <li key={value}>{name}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  )
}

function Answers({ asked, item }: { asked: Ask; item: Item }) {
  const counts = asked.kind === 'opening' ? item.show.map((value) => ({ value, n: 0 })) : []
  return (
    <ul class={asked.kind === 'plane' ? 'sheet-boxes sheet-plane' : 'sheet-boxes'}>
      {stopsOf({ ask: asked, counts }).map(({ key, name }) => (
        <li key={key}>{name}</li>
      ))}
    </ul>
  )
}
