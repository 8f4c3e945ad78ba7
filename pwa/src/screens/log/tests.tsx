import { useEffect, useState } from 'preact/hooks'
import { engine } from '../../worker/client'
import { log } from '../../words/log'
import { FORM_KIND_WORDS, type FormKind } from '../../wire.gen'
import type { Answered } from '../../practice/record'

interface Taken {
  form: FormKind
  answered: number
  of: number
  /** Share of parts that were as they were. */
  right: number
}

/** The tests before, after and long after a course, as bars on one scale. */
export function Tests({ answers, device }: { answers: readonly Answered[]; device: string }) {
  const [taken, setTaken] = useState<Taken[]>([])
  useEffect(() => {
    void Promise.all(FORM_KIND_WORDS.map((form) => take(form, device, answers))).then((all) => setTaken(all.filter(({ answered }) => answered > 0)))
  }, [answers, device])
  if (taken.length === 0) return null
  return (
    <section class="stack">
      <h2>{log.tests}</h2>
      <dl class="bars">
        {taken.map(({ form, answered, of, right }) => (
          <div key={form}>
            <dt>{log.forms[form]}</dt>
            <dd>
              <span class="bar" aria-hidden="true">
                <span style={{ width: `${Math.round(right * 100)}%` }} />
              </span>
              {log.formRight({ right: Math.round(right * 100), answered, of })}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

async function take(form: FormKind, device: string, answers: readonly Answered[]): Promise<Taken> {
  const scenes = await engine.form(form, device).catch(() => [])
  const own = new Set(scenes.map(({ family, seed }) => `${family} ${seed}`))
  const given = answers.filter(({ answer }) => own.has(`${answer.family} ${answer.seed}`))
  const parts = given.flatMap(({ verdict }) => verdict.parts)
  const right = parts.filter((part) => part.right).length / Math.max(1, parts.length)
  return { form, answered: given.length, of: scenes.length, right }
}
