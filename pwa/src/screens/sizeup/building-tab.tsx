import { spoken } from '../../words/names'
import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { Dialog } from '../../ui/dialog'
import { sizeUp } from '../../words/size-up'
import { known } from './known'
import { PlanDrawing } from './plan-drawing'
import { fromScenario, insides, newSketch, withOpen } from './sketch'
import { SketchEditor } from './sketch-editor'
import { begin, face, sketch, startOver, tab } from './state'

/** Which building: one whose inside is known, or a sketch of what is seen. */
export function BuildingTab() {
  const drawn = sketch.value
  if (!drawn) return <Pick />
  return (
    <div class="stack stack-wide">
      <h2>{drawn.name}</h2>
      {drawn.insideKnown ? <KnownInside /> : <SketchEditor drawn={drawn} />}
      <div class="stack building-on">
        <Button look="main" wide onClick={() => (face('A'), (tab.value = 'look'))}>
          {sizeUp.walk}
        </Button>
        <Another />
      </div>
    </div>
  )
}

function Pick() {
  return (
    <div class="stack stack-wide">
      <section class="stack">
        <h2>{sizeUp.pick}</h2>
        <p class="soft">{sizeUp.pickWhy}</p>
        <ul class="buildings">
          {known.map(({ name, scenario }) => (
            <li key={name}>
              <button type="button" class="building" onClick={() => begin(fromScenario(scenario, name))}>
                <PlanDrawing sketch={fromScenario(scenario, name)} />
                <strong>{name}</strong>
              </button>
            </li>
          ))}
        </ul>
      </section>
      <section class="stack building-on">
        <h2>{sizeUp.sketch}</h2>
        <p class="soft">{sizeUp.sketchWhy}</p>
        <Button
          wide
          onClick={() => {
            begin(newSketch(sizeUp.sketchName))
            tab.value = 'building'
          }}
        >
          {sizeUp.beginSketch}
        </Button>
      </section>
    </div>
  )
}

/** The plan, and how its inner doors and hatches stand. */
function KnownInside() {
  const drawn = sketch.value!
  return (
    <div class="stack stack-wide building-halves">
      <div class="stack">
        <PlanDrawing sketch={drawn} />
        <p class="small soft">{sizeUp.planKey}</p>
      </div>
      <section class="stack">
        <h3>{sizeUp.insideDoors}</h3>
        {insides(drawn).map(({ id, open }) => (
          <div key={id} class="inside-door">
            <span>{spoken(id)}</span>
            <Choices
              label={spoken(id)}
              columns={2}
              choices={[
                { value: 1, name: sizeUp.open },
                { value: 0, name: sizeUp.shut },
              ]}
              chosen={(open ?? 0) > 0 ? 1 : 0}
              choose={(next) => (sketch.value = withOpen(drawn, id, next))}
            />
          </div>
        ))}
      </section>
    </div>
  )
}

function Another() {
  const [asking, setAsking] = useState(false)
  return (
    <>
      <Button onClick={() => setAsking(true)}>{sizeUp.another}</Button>
      {asking && (
        <Dialog title={sizeUp.another} close={() => setAsking(false)}>
          <p>{sizeUp.anotherSure}</p>
          <div class="row">
            <Button onClick={() => setAsking(false)}>{sizeUp.stay}</Button>
            <Button look="main" onClick={startOver}>
              {sizeUp.leave}
            </Button>
          </div>
        </Dialog>
      )}
    </>
  )
}
