import { useEffect, useState } from 'preact/hooks'
import { store } from '../../local/store'
import { formsOf, unseen } from '../../practice/forms'
import { answersOf } from '../../practice/record'
import { Button } from '../../ui/button'
import { drill } from '../../words/drill'
import { FORM_KIND_WORDS, type FormKind } from '../../wire.gen'
import { beginForm, choosing } from './state'

interface Left {
  left: number
  of: number
}

/** The tests before, after and long after a course: each is taken once, and one that was left goes on. */
export function Forms() {
  const [forms, setForms] = useState<Partial<Record<FormKind, Left>>>({})
  useEffect(() => {
    countLeft().then(setForms, () => {}) // the engine says at the press what is wrong
  }, [])
  return (
    <section class="stack">
      <h2>{drill.tests}</h2>
      <p class="soft">{drill.testsWhy}</p>
      {FORM_KIND_WORDS.map((form) => (
        <Form key={form} form={form} left={forms[form]} />
      ))}
    </section>
  )
}

function Form({ form, left }: { form: FormKind; left: Left | undefined }) {
  if (left?.left === 0) return <p>{drill.formTaken(drill.forms[form])}</p>
  return (
    <>
      <Button wide disabled={choosing.value} onClick={() => void beginForm(form)}>
        {drill.forms[form]}
      </Button>
      {left && left.left < left.of && <p class="small soft">{drill.formLeft(left.left, left.of)}</p>}
    </>
  )
}

async function countLeft(): Promise<Record<FormKind, Left>> {
  const { journal } = await store()
  const [{ device }, events] = await Promise.all([journal.self(), journal.events()])
  const [forms, answers] = [await formsOf(device), answersOf(events)]
  const count = (form: FormKind) => [form, { left: unseen(forms[form], answers).length, of: forms[form].length }] as const
  return Object.fromEntries(FORM_KIND_WORDS.map(count)) as Record<FormKind, Left>
}
