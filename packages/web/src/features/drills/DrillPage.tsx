/** A sitting of drills, on a phone first: drawn gauges and questions, answers typed as on the page, each marked at once. */
import {
  type ChoiceDrill,
  type Drill,
  type DrillMark,
  formatAmount,
  HAIL_QUESTION,
  hailObjectNames,
  SITTING_LENGTH,
  sittingResult,
  type Unit,
} from '@gaugewright/science'
import { type FormEvent, useEffect, useMemo, useRef, useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { type DrillWords, drillWords } from '../../words/drillWords.ts'
import { fill } from '../../words/fill.ts'
import { urgentFormWordsEn, urgentFormWordsEs } from '../../words/urgentFormWords.ts'
import styles from './DrillPage.module.css'
import { DrillPicture } from './DrillPicture.tsx'
import { sittingSoFar } from './sitting.ts'

const objectNames = { en: urgentFormWordsEn.objects, es: urgentFormWordsEs.objects }

export interface SittingDone {
  id: string
  seed: number
  unit: Unit
  answers: string[]
}

type Props = {
  language: 'en' | 'es'
  unit: Unit
  /** Where a sitting that was broken off lies in this browser. */
  storeKey: string
  passMark: number
  /** Null where nothing is kept: a trial. */
  onDone: ((sitting: SittingDone) => Promise<void>) | null
  back: { href: string }
}

export function DrillPage({ language, unit, storeKey, passMark, onDone, back }: Props) {
  const words = drillWords[language]
  const [sitting, setSitting] = useState<SittingDone>(() => keptSitting(storeKey, unit))
  const [isBegun, setBegun] = useState(sitting.answers.length > 0)
  const [isMarked, setMarked] = useState(false)
  const [saved, setSaved] = useState<'no' | 'saving' | 'yes' | 'failed'>('no')
  const soFar = useMemo(() => sittingSoFar(sitting.seed, sitting.unit, sitting.answers), [sitting])
  useEffect(() => {
    try {
      localStorage.setItem(storeKey, JSON.stringify(sitting))
    } catch {
      // The sitting stays in the page.
    }
  }, [storeKey, sitting])
  const last = soFar.past.at(-1)
  const save = async () => {
    if (onDone === null) return
    setSaved('saving')
    try {
      await onDone(sitting)
      setSaved('yes')
      localStorage.removeItem(storeKey)
    } catch {
      setSaved('failed')
    }
  }
  const answer = (text: string) => {
    setSitting({ ...sitting, answers: [...sitting.answers, text] })
    setMarked(true)
  }
  const goOn = () => {
    setMarked(false)
    if (soFar.drill === null) void save()
  }
  const again = () => {
    setSitting(freshSitting(unit))
    setSaved('no')
    setMarked(false)
  }
  const head = (
    <header className={styles.head}>
      <a href={back.href}>← {words.back}</a>
      <h1>{words.title}</h1>
    </header>
  )
  if (!isBegun) {
    return (
      <main className={styles.page}>
        {head}
        <p>{words.intro}</p>
        <p className={styles.safety}>{words.safety}</p>
        <Button look="primary" onClick={() => setBegun(true)}>
          {words.start}
        </Button>
      </main>
    )
  }
  if (isMarked && last !== undefined) {
    return (
      <main className={styles.page}>
        {head}
        <Progress at={soFar.past.length} words={words} />
        <Marked
          drill={last.drill}
          mark={last.mark}
          unit={sitting.unit}
          language={language}
          onNext={goOn}
          isLast={soFar.drill === null}
        />
      </main>
    )
  }
  if (soFar.drill === null) {
    const result = sittingResult(soFar.past, passMark)
    const share = `${Math.round(result.rightShare * 100)} %`
    return (
      <main className={styles.page}>
        {head}
        <div className={styles.result} data-testid="drill-result" data-passed={result.isPassed} role="status">
          <p className={styles.big}>
            {fill(result.isPassed ? words.result.passed : words.result.failed, {
              share,
              mark: `${Math.round(passMark * 100)} %`,
            })}
          </p>
          {result.repeat.length > 0 ? (
            <p>{fill(words.result.repeat, { skills: result.repeat.map((skill) => words.skills[skill]).join(', ') })}</p>
          ) : null}
          <ul className={styles.skills}>
            {result.skills.map(({ skill, right, asked }) => (
              <li key={skill}>
                <span>{words.skills[skill]}</span>
                <span>
                  {Array.from({ length: asked }, (_, k) => (k < right ? '●' : '○')).join(' ')} {right}/{asked}
                </span>
              </li>
            ))}
          </ul>
          <p>
            {onDone === null
              ? words.result.notSaved
              : saved === 'yes'
                ? words.result.saved
                : saved === 'failed'
                  ? words.result.failedSave
                  : ''}
          </p>
        </div>
        <div className={styles.acts}>
          {saved === 'failed' || (saved === 'no' && onDone !== null) ? (
            <Button onClick={() => void save()}>{words.result.retry}</Button>
          ) : null}
          <Button onClick={again}>{words.result.again}</Button>
        </div>
      </main>
    )
  }
  return (
    <main className={styles.page}>
      {head}
      <Progress at={soFar.past.length + 1} words={words} />
      <Ask key={soFar.past.length} drill={soFar.drill} unit={sitting.unit} language={language} onAnswer={answer} />
    </main>
  )
}

function Progress({ at, words }: { at: number; words: DrillWords }) {
  return (
    <p className={styles.progress}>
      <progress value={at} max={SITTING_LENGTH} aria-label={fill(words.number, { at, all: SITTING_LENGTH })} />
      {fill(words.number, { at, all: SITTING_LENGTH })}
    </p>
  )
}

type AskProps = { drill: Drill; unit: Unit; language: 'en' | 'es'; onAnswer: (text: string) => void }

function Ask({ drill, unit, language, onAnswer }: AskProps) {
  const words = drillWords[language]
  const [text, setText] = useState('')
  const [fillAt, setFillAt] = useState(0)
  const field = useRef<HTMLInputElement>(null)
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [])
  const submit = (event: FormEvent) => {
    event.preventDefault()
    onAnswer(text)
  }
  if (drill.kind === 'choice') {
    return (
      <section className={styles.ask}>
        <h2 ref={heading} tabIndex={-1}>
          {choiceQuestion(drill, language)}
        </h2>
        {drill.skill === 'safety' ? <p className={styles.safety}>{words.safety}</p> : null}
        <div className={styles.options}>
          {drill.options.map((option) => (
            <Button key={option} onClick={() => onAnswer(option)} data-option={option}>
              {choiceOption(drill, option, unit, language)}
            </Button>
          ))}
        </div>
      </section>
    )
  }
  if (drill.kind === 'site') {
    return (
      <section className={styles.ask}>
        <h2 ref={heading} tabIndex={-1}>
          {words.askSite}
        </h2>
        <DrillPicture drill={drill} fillAt={0} language={language} />
        <div className={styles.options}>
          {drill.spots.map((spot, index) => (
            <Button key={`${spot.xM} ${spot.yM}`} onClick={() => onAnswer(String(index + 1))}>
              {fill(words.spot, { number: index + 1 })}
            </Button>
          ))}
        </div>
      </section>
    )
  }
  const fills = drill.kind === 'gauge' ? drill.fillsUm.length : 1
  const isLastFill = fillAt === fills - 1
  const question =
    drill.kind === 'hail'
      ? fill(words.askHail, { unit: words.units[drill.unit] })
      : drill.drops === 'dew'
        ? words.dewNight
        : drill.drops === 'trace'
          ? words.traceNight
          : drill.eyeDeg !== 0
            ? fill(words.eyeNote, {
                way: drill.eyeDeg > 0 ? words.eyeWays.down : words.eyeWays.up,
                angle: Math.abs(drill.eyeDeg),
              })
            : fill(fills > 1 ? words.askTotal : words.askAmount, { unit: words.units[drill.unit] })
  return (
    <section className={styles.ask}>
      <h2 ref={heading} tabIndex={-1}>
        {question}
      </h2>
      {fills > 1 ? <p role="status">{fill(words.fill, { at: fillAt + 1, all: fills })}</p> : null}
      <DrillPicture drill={drill} fillAt={fillAt} language={language} />
      {isLastFill ? (
        <form className={styles.form} onSubmit={submit}>
          <label>
            {fill(drill.kind === 'hail' ? words.askHail : fills > 1 ? words.askTotal : words.askAmount, {
              unit: drill.unit,
            })}
            <input
              ref={field}
              value={text}
              maxLength={60}
              inputMode={drill.kind === 'hail' ? 'decimal' : 'text'}
              autoComplete="off"
              onChange={(event) => setText(event.target.value)}
            />
          </label>
          {drill.kind === 'gauge' ? <p className={styles.soft}>{words.amountHint}</p> : null}
          <Button type="submit" look="primary">
            {words.answer}
          </Button>
        </form>
      ) : (
        <Button look="primary" onClick={() => setFillAt(fillAt + 1)}>
          {words.nextFill}
        </Button>
      )}
    </section>
  )
}

function Marked({
  drill,
  mark,
  unit,
  language,
  onNext,
  isLast,
}: {
  drill: Drill
  mark: DrillMark
  unit: Unit
  language: 'en' | 'es'
  onNext: () => void
  isLast: boolean
}) {
  const words = drillWords[language]
  const next = useRef<HTMLButtonElement | null>(null)
  useEffect(() => {
    next.current = document.querySelector('[data-next]')
    next.current?.focus()
  }, [])
  return (
    <section className={styles.ask}>
      <div className={styles.mark} data-right={mark.isRight} role="status" data-testid="drill-mark">
        <p className={styles.big}>
          {mark.isRight ? `✓ ${words.right}` : `✕ ${words.wrong}`}{' '}
          {fill(words.truth, { amount: truthOf(drill, unit, language) })}
        </p>
        {mark.isRight ? null : <p>{words.reasons[mark.reason]}</p>}
      </div>
      {drill.kind === 'choice' ? null : (
        <DrillPicture
          drill={drill}
          fillAt={drill.kind === 'gauge' ? drill.fillsUm.length - 1 : 0}
          language={language}
          showAnswer
        />
      )}
      {drill.kind === 'gauge' && drill.drops === 'none' ? <p className={styles.soft}>{words.shown}</p> : null}
      <Button look="primary" onClick={onNext} data-next="">
        {isLast ? words.finish : words.next}
      </Button>
    </section>
  )
}

function choiceQuestion({ question, numbers }: ChoiceDrill, language: 'en' | 'es'): string {
  const words = drillWords[language]
  if (question === HAIL_QUESTION) {
    const name = hailObjectNames[numbers.object ?? 0]
    return fill(words.hailObject, { object: name === undefined ? '' : objectNames[language][name] })
  }
  return fill(words.questions[question] ?? question, { hundredths: String(numbers.hundredths ?? '') })
}

function choiceOption({ question }: ChoiceDrill, option: string, unit: Unit, language: 'en' | 'es'): string {
  return question === HAIL_QUESTION ? stoneSize(Number(option), unit) : (drillWords[language].options[option] ?? option)
}

function stoneSize(longMm: number, unit: Unit): string {
  return unit === 'in' ? `${(longMm / 25.4).toFixed(2)} in` : `${longMm} mm`
}

function truthOf(drill: Drill, unit: Unit, language: 'en' | 'es'): string {
  const words = drillWords[language]
  switch (drill.kind) {
    case 'choice':
      return choiceOption(drill, drill.right, unit, language)
    case 'site':
      return fill(words.spot, { number: drill.right + 1 })
    case 'hail':
      return stoneSize(drill.longMm, drill.unit)
    case 'gauge': {
      const whole = formatAmount({ amountUm: drill.trueUm, isTrace: drill.isTrace }, drill.unit, language, 'full')
      if (drill.fillsUm.length < 2) return whole
      const parts = drill.fillsUm.map((um) =>
        formatAmount({ amountUm: um, isTrace: false }, drill.unit, language, 'number'),
      )
      return `${parts.join(' + ')} = ${whole}`
    }
  }
}

function freshSitting(unit: Unit): SittingDone {
  const random = crypto.getRandomValues(new Uint32Array(3))
  return { id: [...random].map((one) => one.toString(36)).join('-'), seed: random[0]! >>> 2, unit, answers: [] }
}

function keptSitting(key: string, unit: Unit): SittingDone {
  try {
    const kept = JSON.parse(localStorage.getItem(key) ?? 'null') as SittingDone | null
    if (
      kept !== null &&
      Number.isInteger(kept.seed) &&
      Array.isArray(kept.answers) &&
      kept.answers.length < SITTING_LENGTH
    )
      return kept
  } catch {
    // What cannot be read is begun anew.
  }
  const asked = Number(new URLSearchParams(location.search).get('seed'))
  return asked > 0 ? { ...freshSitting(unit), seed: Math.floor(asked) } : freshSitting(unit)
}
