import { useEffect, useState } from 'preact/hooks'
import { go } from '../../app/router'
import { dropSet, saveSet, sets } from '../../class/desk'
import { keepSetDraft, keptSetDraft, type SetDraft } from '../../class/set-draft'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { Page } from '../../ui/page'
import { TextField } from '../../ui/text-field'
import { desk } from '../../words/class-desk'
import type { ClassPlanned, ClassSet } from '../../wire.gen'
import { engine, type FamilyInfo } from '../../worker/client'
import { Preview } from '../class/preview'
import { AddOwn } from './add-own'
import { AddScene } from './add-scene'
import { Drop } from './drop'
import { PlannedScene } from './planned-scene'
import { titleOf } from './title-of'
import { found, useDoing, useLoaded } from './use-loaded'

/** One set of scenes, to be built or changed. */
export function OneSet({ id }: { id: string }) {
  const { value, failed } = useLoaded(async () => (id === 'new' ? undefined : found((await sets()).sets, id)))
  const families = useFamilies()
  const ready = families && (id === 'new' || value)
  return (
    <Page title={value?.title ?? desk.newSet} wide>
      {failed && <p role="alert">{failed}</p>}
      {!ready && !failed && <p role="status">{desk.looking}</p>}
      {ready && <Builder key={value?.id} held={value} families={families} />}
    </Page>
  )
}

function useFamilies(): FamilyInfo[] | undefined {
  const [families, setFamilies] = useState<FamilyInfo[]>()
  useEffect(() => void engine.families().then(setFamilies), [])
  return families
}

/** A set as it is being built, kept on this device until it is saved. */
function useBuilt(held: ClassSet | undefined) {
  const [asSaved, setAsSaved] = useState<SetDraft>(held ?? { title: '', scenes: [] })
  const [draft, setDraft] = useState(keptSetDraft(held?.id))
  const [saved, setSaved] = useState(false)
  const { title, scenes } = draft ?? asSaved
  const hold = (next: SetDraft | undefined) => {
    setDraft(next)
    keepSetDraft(held?.id, next)
    setSaved(false)
  }
  const save = async () => {
    const { set } = await saveSet(held?.id, title.trim(), scenes)
    hold(undefined)
    setAsSaved(set)
    setSaved(true)
    if (!held) go(`/instructor/sets/${set.id}`)
  }
  const drop = async () => {
    await dropSet(held!.id)
    keepSetDraft(held!.id, undefined)
    go('/instructor/sets')
  }
  return { title, scenes, draft, saved, hold, save, drop }
}

function Builder({ held, families }: { held: ClassSet | undefined; families: readonly FamilyInfo[] }) {
  const { title, scenes, draft, saved, hold, save, drop } = useBuilt(held)
  const [seen, see] = useState<ClassPlanned>()
  const { failed, doing, run } = useDoing()
  const change = (next: readonly ClassPlanned[]) => hold({ title, scenes: next })
  return (
    <div class="desk-edit">
      <div class="stack stack-wide">
        <TextField label={desk.setTitle} value={title} set={(next) => hold({ title: next, scenes })} most={80} hint={desk.setTitleHint} />
        <ol class="desk-list planned-list">
          {scenes.map((scene, at) => (
            <PlannedScene key={`${scene.family} ${scene.seed}`} scenes={scenes} at={at} families={families} change={change} see={see} />
          ))}
        </ol>
      </div>
      <div class="desk-beside stack stack-wide">
        <AddScene families={families} add={(scene) => change([...scenes, scene])} />
        <AddOwn add={(scene) => change([...scenes, scene])} />
      </div>
      <div class="stack stack-wide">
        {failed && <p role="alert">{failed}</p>}
        {draft && <p class="small soft">{desk.unsaved}</p>}
        <div class="row">
          <Button look="main" disabled={doing} onClick={() => void run(save, (title.trim() === '' || scenes.length === 0) && desk.setMissing)}>
            {saved ? desk.saved : desk.saveSet}
          </Button>
          {draft && (
            <Button look="quiet" onClick={() => hold(undefined)}>
              {held ? desk.asSaved : desk.startOver}
            </Button>
          )}
          {held && <Drop name={desk.dropSet} why={desk.dropSetSure} disabled={doing} drop={() => void run(drop)} />}
        </div>
        <p class="row">
          <a class="lone-link" href="/instructor/sets">{desk.sets}</a>
          {held && !draft && <a class="lone-link" href="/instructor">{desk.open}</a>}
        </p>
      </div>
      {seen && (
        <Dialog title={titleOf(families, seen)} close={() => see(undefined)}>
          <Preview shown={seen} />
        </Dialog>
      )}
    </div>
  )
}
