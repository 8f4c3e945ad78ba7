import { locale } from '../../words/language'
import { log } from '../../words/log'
import { ordinalCues, type OrdinalCue } from '../../words/scales'
import type { Progress, SkillProgress } from '../../wire.gen'
import { Dots } from './dots'
import { enough, type OwnRecord } from './record'
import { Spark } from './spark'

/** One plot a skill, the weakest first: agreement, lean and the way it went. Nothing is added up into a mark. */
export function Skills({ progress, record }: { progress: Progress; record: OwnRecord }) {
  const [weakest] = progress.skills
  if (!weakest) return null
  return (
    <section class="log-skills stack">
      <h2>{log.perCue}</h2>
      <p>{[log.answered(progress.n), ...(progress.median_took_s ? [log.took(Math.round(progress.median_took_s))] : [])].join(' ')}</p>
      <p class="small soft">{log.perCueWhy}</p>
      <div class="cue-plots">
        {progress.skills.map((skill, n) => (
          <Skill key={skill.skill} skill={skill} record={record} weakest={n === 0 && skill.n >= enough && progress.skills.length > 1} />
        ))}
      </div>
    </section>
  )
}

function Skill({ skill, record, weakest }: { skill: SkillProgress; record: OwnRecord; weakest: boolean }) {
  const name = log.skills[skill.skill]
  const tally = record.get(skill.skill)
  const said = spell(skill)
  return (
    <figure class="cue-plot">
      <figcaption>
        <h3>
          {name} {weakest && <small class="weakest">{log.weakest}</small>}
        </h3>
        <p class="small soft">{said.join(' ')}</p>
      </figcaption>
      {tally && tally.off.length > 0 && <Dots off={tally.off} label={log.plotOf(name, said.join(' '))} {...axis(skill)} />}
      {tally && <Spark errors={tally.errors} name={name} />}
    </figure>
  )
}

const isOrdinal = ({ skill }: SkillProgress) => ordinalCues.includes(skill as OrdinalCue)

function axis(skill: SkillProgress) {
  return isOrdinal(skill) ? { reach: 4, left: log.lighter, right: log.heavier } : { reach: 0.6, left: log.lower, right: log.higher }
}

/** What the numbers say, in whole sentences. */
function spell(skill: SkillProgress): string[] {
  const { n, given, right, bias, kappa } = skill
  const said: string[] = [log.asItWas(Math.round(right * n), n)]
  if (n > given) said.push(log.cannotTell(n - given))
  if (given < enough) return [...said, log.few]
  if (bias !== undefined && bias !== null) said.push(isOrdinal(skill) ? spellBias(bias) : spellHeight(bias))
  if (kappa !== undefined && kappa !== null) said.push(log.kappa(kappa.toLocaleString(locale, { maximumFractionDigits: 2 })))
  else if (isOrdinal(skill)) said.push(log.kappaLater)
  return said
}

function spellBias(bias: number): string {
  const steps = Math.abs(bias).toLocaleString(locale, { maximumFractionDigits: 1 })
  if (steps === '0') return log.leansNowhere
  return bias > 0 ? log.leansHeavy(steps) : log.leansLight(steps)
}

/** The neutral plane is off by a share of the opening's height. */
function spellHeight(bias: number): string {
  const percent = Math.round(Math.abs(bias) * 100)
  if (percent === 0) return log.leansNowhere
  return bias > 0 ? log.leansHigh(percent) : log.leansLow(percent)
}
