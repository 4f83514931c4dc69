/** Obstacles as they are seen standing at the gauge: bearing, distance, height, one after the other by keyboard. */
import { type LengthUnit, metresPer, siteWords } from '@gaugewright/drawings'
import { type ObstacleKind, obstacleKinds } from '@gaugewright/science'
import { type FormEvent, useRef, useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import { freshId, rectangle } from './planItems.ts'
import styles from './SitePage.module.css'
import type { EditedPlan } from './usePlan.ts'

type Props = { edited: EditedPlan; language: 'en' | 'es'; unit: LengthUnit }

const empty = { kind: 'tree' as ObstacleKind, bearing: '', distance: '', height: '', width: '20' }
const AROUND_M = 6

export function SeenForm({ edited, language, unit }: Props) {
  const words = sitingWords[language]
  const first = useRef<HTMLSelectElement>(null)
  const [row, setRow] = useState(empty)
  const [bad, setBad] = useState<string | null>(null)
  const { plan } = edited
  const add = (event: FormEvent) => {
    event.preventDefault()
    const number = (text: string) => (text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.')))
    const numbers = {
      bearing: number(row.bearing),
      distance: number(row.distance),
      height: number(row.height),
      width: number(row.width),
    }
    const missing = (Object.keys(numbers) as (keyof typeof numbers)[]).find((key) => !Number.isFinite(numbers[key]))
    if (missing !== undefined) return setBad(missing)
    setBad(null)
    const at = plan.gauge?.at ?? { xM: 0, yM: 0 }
    const id = freshId(plan)
    edited.set({
      ...plan,
      outline: plan.outline.length === 0 ? rectangle(at, 2 * AROUND_M, 2 * AROUND_M) : plan.outline,
      gauge: plan.gauge ?? { at, rimM: 0.6, hasWindShield: false },
      obstacles: [
        ...plan.obstacles,
        {
          id,
          kind: row.kind,
          name: '',
          shape: {
            form: 'bearing',
            seenFrom: at,
            bearingDeg: ((numbers.bearing % 360) + 360) % 360,
            distanceM: numbers.distance * metresPer[unit],
            topM: numbers.height * metresPer[unit],
            widthDeg: numbers.width,
          },
        },
      ],
    })
    setRow({ ...empty, kind: row.kind })
    first.current?.focus()
  }
  const field = (key: 'bearing' | 'distance' | 'height' | 'width', label: string) => (
    <label className={styles.field}>
      {label}
      <input
        inputMode="decimal"
        value={row[key]}
        aria-invalid={bad === key}
        onChange={(event) => setRow({ ...row, [key]: event.target.value })}
      />
      {bad === key ? (
        <span role="alert" className={styles.bad}>
          {words.number}
        </span>
      ) : null}
    </label>
  )
  return (
    <form className={styles.seen} onSubmit={add} noValidate>
      <p>{words.seenIntro}</p>
      <div className={styles.seenRow}>
        <label className={styles.field}>
          {words.fields.kind}
          <select
            ref={first}
            value={row.kind}
            onChange={(event) => setRow({ ...row, kind: event.target.value as ObstacleKind })}
          >
            {obstacleKinds.map((kind) => (
              <option key={kind} value={kind}>
                {siteWords[language].kinds[kind]}
              </option>
            ))}
          </select>
        </label>
        {field('bearing', words.fields.bearing)}
        {field('distance', `${words.fields.distance}, ${unit}`)}
        {field('height', `${words.fields.height}, ${unit}`)}
        {field('width', words.fields.width)}
        <Button type="submit" look="primary">
          {words.seenAdd}
        </Button>
      </div>
    </form>
  )
}
