import type { DayEvidence } from '@gaugewright/contract'
import { useWidth } from '../../hooks/useWidth.ts'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './ExpectedChart.module.css'
import { axisTicks, expectedShape, rootShare } from './expectedShape.ts'

const heightPx = 150
const left = 46
const right = 14
const top = 40
const bottom = 112

/** The expected distribution: chance of dry as a bar, wet amounts as a curve, with the reading and the proposal on it. */
export function ExpectedChart({ evidence }: { evidence: DayEvidence }) {
  const { words, format } = useWords()
  const [frame, widthPx] = useWidth<HTMLDivElement>(380)
  const { expectation, reading } = evidence
  const proposal = evidence.suggested === 'amend' ? evidence.proposal : null
  const typedMm = reading.amountUm / 1000
  const proposedMm = proposal ? proposal.amountUm / 1000 : null
  const shape = expectedShape(expectation, [typedMm, proposedMm ?? 0], format.stepMm)
  const x = (mm: number) => left + rootShare(mm, shape.axisMaxMm) * (widthPx - left - right)
  const y = (height: number) => bottom - height * (bottom - top)
  const curve = shape.density.map(({ mm, height }) => `${x(mm).toFixed(1)},${y(height).toFixed(1)}`)
  const inRange = shape.density.filter(({ mm }) => mm >= shape.p10Mm && mm <= shape.p90Mm)
  const perUnit = format.unit === 'in' ? 25.4 : 1
  const note = fill(words.expectedNote, {
    median: format.mm(shape.p50Mm),
    low: format.bare(shape.p10Mm),
    high: format.mm(shape.p90Mm),
    dry: format.percent(shape.dryChance),
  })
  const marks = [
    {
      mm: typedMm,
      text: fill(words.chartReading, { amount: format.amount(reading.amountUm, reading.isTrace) }),
      kind: 'typed',
    },
    ...(proposal && proposedMm !== null && proposedMm !== typedMm
      ? [
          {
            mm: proposedMm,
            text: fill(words.chartProposal, { amount: format.amount(proposal.amountUm, proposal.isTrace) }),
            kind: 'proposed',
          },
        ]
      : []),
  ]
  return (
    <figure ref={frame} className={styles.figure}>
      <svg width={widthPx} height={heightPx} role="img" aria-label={`${note}; ${marks.map((m) => m.text).join('; ')}`}>
        <g className={styles.dry}>
          <rect x={6} y={y(1)} width={16} height={bottom - y(1)} className={styles.dryFrame} />
          <rect
            x={6}
            y={y(shape.dryChance)}
            width={16}
            height={bottom - y(shape.dryChance)}
            className={styles.dryFill}
          />
          <text x={14} y={bottom + 15} textAnchor="middle">
            {words.dry}
          </text>
        </g>
        {curve.length > 0 ? (
          <>
            <polygon
              className={styles.all}
              points={`${x(0)},${bottom} ${curve.join(' ')} ${x(shape.axisMaxMm)},${bottom}`}
            />
            {inRange.length > 1 ? (
              <polygon
                className={styles.range}
                points={[
                  `${x(inRange[0]!.mm)},${bottom}`,
                  ...inRange.map(({ mm, height }) => `${x(mm)},${y(height)}`),
                  `${x(inRange.at(-1)!.mm)},${bottom}`,
                ].join(' ')}
              />
            ) : null}
            <polyline className={styles.curve} points={curve.join(' ')} />
            {shape.p50Mm > 0 ? <path className={styles.median} d={`M${x(shape.p50Mm)} ${bottom}V${top + 4}`} /> : null}
          </>
        ) : null}
        <path className={styles.axis} d={`M${left - 4} ${bottom}H${widthPx - right}`} />
        {axisTicks(shape.axisMaxMm / perUnit).map((value) => (
          <g key={value} className={styles.tick}>
            <path d={`M${x(value * perUnit)} ${bottom}v4`} />
            <text x={x(value * perUnit)} y={bottom + 15} textAnchor="middle">
              {value === 0 ? '0' : format.number(value, value < 0.1 ? 2 : value < 1 ? 1 : 0)}
            </text>
          </g>
        ))}
        <text className={styles.unit} x={widthPx - right} y={heightPx - 6} textAnchor="end">
          {format.unitName}
        </text>
        {marks.map((mark, i) => (
          <g key={mark.kind} className={mark.kind === 'typed' ? styles.typed : styles.proposed}>
            <path d={`M${x(mark.mm)} ${bottom}V${16 + i * 14}`} />
            {mark.kind === 'typed' ? (
              <path className={styles.head} d={`M${x(mark.mm)} ${bottom - 1}l-5 -9h10z`} />
            ) : (
              <circle className={styles.head} cx={x(mark.mm)} cy={bottom - 6} r="4.5" />
            )}
            <text
              x={x(mark.mm) + (x(mark.mm) > widthPx * 0.6 ? -6 : 6)}
              y={21 + i * 14}
              textAnchor={x(mark.mm) > widthPx * 0.6 ? 'end' : 'start'}
            >
              {mark.text}
            </text>
          </g>
        ))}
      </svg>
      <figcaption>{note}</figcaption>
    </figure>
  )
}
