import { largestStoneMm, stoneMeasures } from '@gaugewright/contract'
import type { HailObjectName } from '@gaugewright/science'
import { useId, useState } from 'react'
import { fill } from '../../words/fill.ts'
import { CardScale } from './CardScale.tsx'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import { sizeOptions, writeStone } from './hailSizes.ts'
import { OneOf } from './Options.tsx'
import { StoneCircle } from './StoneCircle.tsx'
import { typedUm } from './typedRate.ts'
import { type StoneInput, stoneByObject } from './urgentDraft.ts'
import { useScreenScale } from './useScreenScale.ts'

interface Props {
  label: string
  stone: StoneInput | null
  /** False while measuring would mean going out: then objects alone are offered. */
  isMeasuringOffered: boolean
  mayBeEmpty: boolean
  onChange: (stone: StoneInput | null) => void
}

/** A stone by object; and once it is safe, with a ruler or by the ruler on the screen. */
export function StoneField({ label, stone, isMeasuringOffered, mayBeEmpty, onChange }: Props) {
  const { words } = useFormInUse()
  const [by, setBy] = useState<StoneInput['by']>(stone?.by ?? 'object')
  const used = isMeasuringOffered ? by : 'object'
  return (
    <fieldset className={styles.group}>
      <legend>{label}</legend>
      {isMeasuringOffered ? (
        <OneOf
          label={words.howMeasured}
          value={used}
          options={stoneMeasures.toReversed().map((measure) => ({ value: measure, label: words.measures[measure] }))}
          onChange={setBy}
        />
      ) : null}
      {used === 'object' ? <ByObject label={label} {...{ stone, mayBeEmpty, onChange }} /> : null}
      {used === 'ruler' ? <ByRuler {...{ stone, onChange }} /> : null}
      {used === 'phone ruler' ? <ByScreen {...{ stone, onChange }} /> : null}
    </fieldset>
  )
}

function ByObject({ label, stone, mayBeEmpty, onChange }: Omit<Props, 'isMeasuringOffered'>) {
  const { words, unit, language } = useFormInUse()
  const isOther = stone !== null && stone.by !== 'object'
  return (
    <div className={styles.field}>
      <select
        aria-label={label}
        value={stone?.object ?? ''}
        onChange={(event) =>
          onChange(event.target.value === '' ? null : stoneByObject(event.target.value as HailObjectName))
        }
      >
        {mayBeEmpty || isOther ? (
          <option value="">{isOther ? writeStone(stone.diameterMm, unit, language) : words.notGiven}</option>
        ) : null}
        {sizeOptions.map(({ object, diameterMm }) => (
          <option key={object} value={object}>
            {fill(words.sizeChoice, { object: words.objects[object], size: writeStone(diameterMm, unit, language) })}
          </option>
        ))}
      </select>
    </div>
  )
}

function ByRuler({ stone, onChange }: Pick<Props, 'stone' | 'onChange'>) {
  const { words, unit } = useFormInUse()
  const [text, setText] = useState('')
  const id = useId()
  const um = typedUm(text, unit)
  const isRight = um !== null && um >= 1000 && um <= largestStoneMm * 1000
  const type = (next: string) => {
    setText(next)
    const typed = typedUm(next, unit)
    if (typed !== null && typed >= 1000 && typed <= largestStoneMm * 1000)
      onChange({ by: 'ruler', diameterMm: typed / 1000 })
  }
  return (
    <div className={styles.field}>
      <label className={styles.label} htmlFor={id}>
        {fill(words.rulerSize, { unit })}
      </label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={text}
        aria-invalid={text !== '' && !isRight}
        onChange={(event) => type(event.target.value)}
      />
      {text !== '' && !isRight ? <p className={styles.trouble}>{words.rulerUnreadable}</p> : null}
      {stone?.by === 'ruler' && isRight ? <StoneNow stone={stone} /> : null}
    </div>
  )
}

function ByScreen({ stone, onChange }: Pick<Props, 'stone' | 'onChange'>) {
  const [devicePxPerMm, setScale] = useScreenScale()
  if (devicePxPerMm === null) return <CardScale onScale={setScale} />
  return (
    <>
      <StoneCircle
        devicePxPerMm={devicePxPerMm}
        onTake={(diameterMm) => onChange({ by: 'phone ruler', diameterMm })}
        onScaleAgain={() => setScale(null)}
      />
      {stone?.by === 'phone ruler' ? <StoneNow stone={stone} /> : null}
    </>
  )
}

function StoneNow({ stone }: { stone: StoneInput }) {
  const { unit, language } = useFormInUse()
  return (
    <p role="status" className={styles.note}>
      ✓ {writeStone(stone.diameterMm, unit, language)}
    </p>
  )
}
