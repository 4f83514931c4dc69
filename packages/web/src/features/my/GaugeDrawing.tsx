import type { Language, Unit } from '@gaugewright/science'
import { useId } from 'react'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import { sayAmount, type TypedAmount, tubeOf } from './amountText.ts'
import styles from './GaugeDrawing.module.css'
import { placeInGauge } from './placeInGauge.ts'

type Props = { amount: TypedAmount; unit: Unit; language: Language; words: MyWords; isSmall?: boolean }

/**
 * The gauge to scale, one unit of the drawing a hundredth of the can's width: the can is 4 in wide; the tube has a tenth of
 * its area, so that it shows ten times the depth, and stands in the can. What is above a full tube stands around it.
 */
const can = { left: 8, width: 100, height: 285, bottom: 300 }
const tubeWidth = 100 / Math.sqrt(10)
const tubeHeight = 250
const tubeLeft = can.left + (can.width - tubeWidth) / 2
const canPerTube = 1 / 10
/** Around the tube there is nine tenths of the can's area. */
const around = 1 / (1 - canPerTube)
const lens = { left: 150, width: 86, top: 60, height: 180 }

export function GaugeDrawing({ amount, unit, language, words, isSmall = false }: Props) {
  const clip = useId()
  const { tubeUm } = tubeOf[unit]
  const inTube = Math.min(amount.amountUm, tubeUm)
  const above = Math.max(0, amount.amountUm - tubeUm)
  const tubeLevel = can.bottom - (inTube / tubeUm) * tubeHeight
  const canLevel = can.bottom - Math.min(can.height, (above / tubeUm) * tubeHeight * canPerTube * around)
  const label = fill(words.gauge.label, {
    amount: sayAmount(amount, unit, language, words),
    place: placeInGauge(amount, unit, language, words),
  })
  return (
    <figure className={isSmall ? styles.small : styles.figure}>
      <svg viewBox="0 0 250 312" role="img" aria-label={label} data-testid="gauge-drawing" data-um={amount.amountUm}>
        <rect className={styles.canWater} x={can.left} width={can.width} y={canLevel} height={can.bottom - canLevel} />
        <rect
          className={styles.glass}
          x={tubeLeft}
          width={tubeWidth}
          y={can.bottom - tubeHeight - 12}
          height={tubeHeight + 12}
        />
        <rect className={styles.water} x={tubeLeft} width={tubeWidth} y={tubeLevel} height={can.bottom - tubeLevel} />
        {amount.isTrace ? <Drops /> : null}
        <TubeMarks unit={unit} />
        <path
          className={styles.can}
          d={`M${can.left} ${can.bottom - can.height} V${can.bottom} H${can.left + can.width} V${can.bottom - can.height}`}
        />
        <path
          className={styles.tube}
          d={`M${tubeLeft} ${can.bottom - tubeHeight - 12} V${can.bottom} H${tubeLeft + tubeWidth} V${can.bottom - tubeHeight - 12}`}
        />
        <Lens clip={clip} unit={unit} amountUm={inTube} language={language} />
        {above > 0 ? <TubeRow tubes={amount.amountUm / tubeUm} /> : null}
        <path
          className={styles.lead}
          d={`M${tubeLeft + tubeWidth} ${tubeLevel} L${lens.left} ${lens.top + lens.height / 2}`}
        />
      </svg>
      {isSmall ? null : <figcaption className={styles.caption}>{words.gauge.scale}</figcaption>}
    </figure>
  )
}

/** Every hundredth of an inch, or half millimetre; the tenths and millimetres longer. */
function TubeMarks({ unit }: { unit: Unit }) {
  const count = unit === 'in' ? 100 : 50
  const every = unit === 'in' ? 10 : 2
  const marks = Array.from({ length: count }, (_, index) => index + 1)
  return (
    <g>
      {marks.map((mark) => {
        const y = can.bottom - (mark / count) * tubeHeight
        const length = mark % every === 0 ? 13 : mark % (every / 2) === 0 ? 9 : 6
        return <path key={mark} className={styles.mark} d={`M${tubeLeft} ${y} h${length}`} />
      })}
      {marks
        .filter((mark) => mark % (unit === 'in' ? 20 : 10) === 0)
        .map((mark) => (
          <text
            key={mark}
            className={styles.number}
            x={tubeLeft - 3}
            y={can.bottom - (mark / count) * tubeHeight + 3.5}
          >
            {unit === 'in' ? (mark / count).toFixed(1).replace(/^0/, '') : mark / 2}
          </text>
        ))}
    </g>
  )
}

/** The lines about the water's surface, large: five long ones at most. */
function Lens({ clip, unit, amountUm, language }: { clip: string; unit: Unit; amountUm: number; language: Language }) {
  const stepUm = unit === 'in' ? 254 : 200
  const shown = 20
  const perStep = lens.height / shown
  const middle = lens.top + lens.height / 2
  const level = amountUm / stepUm
  const from = Math.max(0, Math.floor(level - shown / 2))
  const yOf = (line: number): number => middle - (line - level) * perStep
  const lines = Array.from({ length: shown + 2 }, (_, index) => from + index).filter(
    (line) => line * stepUm <= tubeOf[unit].tubeUm && yOf(line) > lens.top && yOf(line) < lens.top + lens.height,
  )
  const every = unit === 'in' ? 10 : 5
  const say = (line: number): string => {
    const value = unit === 'in' ? (line / 100).toFixed(1) : String((line * stepUm) / 1000)
    return language === 'es' ? value.replace('.', ',') : value
  }
  const floor = Math.min(lens.top + lens.height, yOf(0))
  return (
    <g>
      <clipPath id={clip}>
        <rect x={lens.left} y={lens.top} width={lens.width} height={lens.height} rx="8" />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        <rect className={styles.glass} x={lens.left} y={lens.top} width={lens.width} height={lens.height} />
        <rect
          className={styles.water}
          x={lens.left}
          y={middle}
          width={lens.width}
          height={Math.max(0, floor - middle)}
        />
        {lines.map((line) => {
          const isLong = line % every === 0
          const y = yOf(line)
          return (
            <g key={line}>
              <path className={isLong ? styles.longMark : styles.mark} d={`M${lens.left} ${y} h${isLong ? 34 : 18}`} />
              {isLong ? (
                <text className={styles.big} x={lens.left + 38} y={Math.abs(y - middle) < 9 ? middle - 5 : y + 5.5}>
                  {say(line)}
                </text>
              ) : null}
            </g>
          )
        })}
        {amountUm > 0 ? <path className={styles.surface} d={`M${lens.left} ${middle} h${lens.width}`} /> : null}
      </g>
      <rect className={styles.rim} x={lens.left} y={lens.top} width={lens.width} height={lens.height} rx="8" />
    </g>
  )
}

function Drops() {
  const at = [
    [0.3, 4],
    [0.6, 9],
    [0.75, 3],
    [0.45, 15],
  ] as const
  return (
    <g>
      {at.map(([share, up]) => (
        <circle key={share} className={styles.drop} cx={tubeLeft + share * tubeWidth} cy={can.bottom - up} r="2.2" />
      ))}
    </g>
  )
}

/** What would be poured: a small tube for each fill, the last one as full as it would be. */
function TubeRow({ tubes }: { tubes: number }) {
  const count = Math.min(12, Math.ceil(tubes))
  return (
    <g>
      {Array.from({ length: count }, (_, index) => {
        const share = Math.min(1, tubes - index)
        const x = lens.left + (index % 6) * 15
        const y = 14 + Math.floor(index / 6) * 24
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: fills have no name but their order
          <g key={index}>
            <rect className={styles.water} x={x} width="8" y={y + 18 * (1 - share)} height={18 * share} />
            <path className={styles.tube} d={`M${x} ${y - 2} V${y + 18} H${x + 8} V${y - 2}`} />
          </g>
        )
      })}
    </g>
  )
}
