/** The chosen thing in exact numbers: everything that can be dragged can be typed. */
import { type LengthUnit, obstacleName, siteWords, told } from '@gaugewright/drawings'
import type { Obstacle, YardPlan, YardPoint } from '@gaugewright/science'
import { Button } from '../../ui/Button.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import { LengthField } from './LengthField.tsx'
import { type Chosen, cornersOf, middleOf, moved, withCornerAt, without } from './planItems.ts'
import styles from './SitePage.module.css'
import type { EditedPlan } from './usePlan.ts'

export type ItemFormProps = {
  edited: EditedPlan
  chosen: Chosen
  onChoose: (chosen: Chosen) => void
  language: 'en' | 'es'
  unit: LengthUnit
}

export function ItemForm({ edited, chosen, onChoose, language, unit }: ItemFormProps) {
  const words = sitingWords[language]
  const { plan } = edited
  if (chosen === null) return null
  const remove = (
    <Button
      onClick={() => {
        edited.set(without(plan, chosen))
        onChoose(null)
      }}
    >
      {words.remove}
    </Button>
  )
  if (chosen.kind === 'gauge') {
    const { gauge } = plan
    if (gauge === null) return null
    return (
      <fieldset className={styles.form}>
        <legend>{words.gauge}</legend>
        <Place
          at={gauge.at}
          onMove={(dx, dy) => edited.set(moved(plan, chosen, dx, dy), 'form')}
          words={words}
          unit={unit}
        />
        <LengthField
          label={words.fields.rim}
          value={gauge.rimM}
          unit={unit}
          hint={words.number}
          onChange={(rimM) => edited.set({ ...plan, gauge: { ...gauge, rimM } }, 'rim')}
        />
        <label className={styles.check}>
          <input
            type="checkbox"
            checked={gauge.hasWindShield}
            onChange={(event) => edited.set({ ...plan, gauge: { ...gauge, hasWindShield: event.target.checked } })}
          />
          {words.fields.shield}
        </label>
        {remove}
      </fieldset>
    )
  }
  if (chosen.kind === 'outline') {
    return (
      <fieldset className={styles.form}>
        <legend>{words.outline}</legend>
        <Corners plan={plan} chosen={chosen} corners={plan.outline} edited={edited} words={words} unit={unit} />
        {remove}
      </fieldset>
    )
  }
  if (chosen.kind === 'hazard') {
    const hazard = plan.hazards.find(({ id }) => id === chosen.id)
    if (hazard === undefined) return null
    return (
      <fieldset className={styles.form}>
        <legend>{siteWords[language].hazards[hazard.kind]}</legend>
        <Place
          at={hazard.at}
          onMove={(dx, dy) => edited.set(moved(plan, chosen, dx, dy), 'form')}
          words={words}
          unit={unit}
        />
        {hazard.kind === 'sprinkler' ? (
          <LengthField
            label={words.fields.reach}
            value={hazard.reachM}
            unit={unit}
            hint={words.number}
            onChange={(reachM) =>
              edited.set(
                { ...plan, hazards: plan.hazards.map((one) => (one.id === hazard.id ? { ...one, reachM } : one)) },
                'reach',
              )
            }
          />
        ) : null}
        {remove}
      </fieldset>
    )
  }
  const obstacle = plan.obstacles.find(({ id }) => id === chosen.id)
  if (obstacle === undefined) return null
  const change = (next: Obstacle, stroke: string) =>
    edited.set(
      { ...plan, obstacles: plan.obstacles.map((one) => (one.id === next.id ? next : one)) },
      `${stroke} ${next.id}`,
    )
  return (
    <fieldset className={styles.form}>
      <legend>{obstacleName(plan, obstacle.id, language)}</legend>
      <label className={styles.field}>
        {words.fields.name}
        <input
          value={obstacle.name}
          maxLength={120}
          onChange={(event) => change({ ...obstacle, name: event.target.value }, 'name')}
        />
      </label>
      <Heights obstacle={obstacle} onChange={change} words={words} unit={unit} />
      {obstacle.shape.form === 'bearing' ? null : (
        <Place
          at={middleOf(cornersOf(obstacle))}
          onMove={(dx, dy) => edited.set(moved(plan, chosen, dx, dy), 'form')}
          words={words}
          unit={unit}
        />
      )}
      {obstacle.shape.form === 'round' || obstacle.shape.form === 'bearing' ? null : (
        <Corners plan={plan} chosen={chosen} corners={cornersOf(obstacle)} edited={edited} words={words} unit={unit} />
      )}
      {remove}
    </fieldset>
  )
}

type Words = (typeof sitingWords)['en']

function Heights({
  obstacle,
  onChange,
  words,
  unit,
}: {
  obstacle: Obstacle
  onChange: (next: Obstacle, stroke: string) => void
  words: Words
  unit: LengthUnit
}) {
  const { shape } = obstacle
  const hint = words.number
  if (shape.form === 'gable') {
    return (
      <>
        <LengthField
          label={words.fields.eaves}
          value={shape.eavesM}
          unit={unit}
          hint={hint}
          onChange={(eavesM) => onChange({ ...obstacle, shape: { ...shape, eavesM } }, 'eaves')}
        />
        <LengthField
          label={words.fields.ridge}
          value={shape.ridgeM}
          unit={unit}
          hint={hint}
          onChange={(ridgeM) => onChange({ ...obstacle, shape: { ...shape, ridgeM } }, 'ridge')}
        />
      </>
    )
  }
  return (
    <>
      <LengthField
        label={words.fields.height}
        value={shape.topM}
        unit={unit}
        hint={hint}
        onChange={(topM) => onChange({ ...obstacle, shape: { ...shape, topM } }, 'top')}
      />
      {shape.form === 'round' ? (
        <LengthField
          label={words.fields.radius}
          value={shape.radiusM}
          unit={unit}
          hint={hint}
          onChange={(radiusM) => onChange({ ...obstacle, shape: { ...shape, radiusM } }, 'radius')}
        />
      ) : null}
      {shape.form === 'bearing' ? (
        <>
          <LengthField
            label={words.fields.bearing}
            value={shape.bearingDeg}
            unit="°"
            hint={hint}
            onChange={(bearingDeg) => onChange({ ...obstacle, shape: { ...shape, bearingDeg } }, 'bearing')}
          />
          <LengthField
            label={words.fields.distance}
            value={shape.distanceM}
            unit={unit}
            hint={hint}
            onChange={(distanceM) => onChange({ ...obstacle, shape: { ...shape, distanceM } }, 'distance')}
          />
          <LengthField
            label={words.fields.width}
            value={shape.widthDeg}
            unit="°"
            hint={hint}
            onChange={(widthDeg) => onChange({ ...obstacle, shape: { ...shape, widthDeg } }, 'width')}
          />
        </>
      ) : null}
    </>
  )
}

function Place({
  at,
  onMove,
  words,
  unit,
}: {
  at: YardPoint
  onMove: (dxM: number, dyM: number) => void
  words: Words
  unit: LengthUnit
}) {
  return (
    <>
      <LengthField
        label={words.fields.x}
        value={at.xM}
        unit={unit}
        hint={words.number}
        onChange={(xM) => onMove(xM - at.xM, 0)}
      />
      <LengthField
        label={words.fields.y}
        value={at.yM}
        unit={unit}
        hint={words.number}
        onChange={(yM) => onMove(0, yM - at.yM)}
      />
    </>
  )
}

function Corners({
  plan,
  chosen,
  corners,
  edited,
  words,
  unit,
}: {
  plan: YardPlan
  chosen: Chosen
  corners: readonly YardPoint[]
  edited: EditedPlan
  words: Words
  unit: LengthUnit
}) {
  return (
    <details className={styles.corners}>
      <summary>{words.fields.corners}</summary>
      {corners.map((at, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a corner is its place in the ring
        <fieldset key={index} className={styles.corner}>
          <legend>{told(words.fields.corner, { number: String(index + 1) })}</legend>
          <LengthField
            label={words.fields.x}
            value={at.xM}
            unit={unit}
            hint={words.number}
            onChange={(xM) => edited.set(withCornerAt(plan, chosen, index, { ...at, xM }), `corner ${index}`)}
          />
          <LengthField
            label={words.fields.y}
            value={at.yM}
            unit={unit}
            hint={words.number}
            onChange={(yM) => edited.set(withCornerAt(plan, chosen, index, { ...at, yM }), `corner ${index}`)}
          />
        </fieldset>
      ))}
    </details>
  )
}
