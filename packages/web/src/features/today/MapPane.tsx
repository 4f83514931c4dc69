import type { DayField, DayReview } from '@gaugewright/contract'
import { type ReactNode, useMemo } from 'react'
import { useWords } from '../../words/WordsContext.tsx'
import { AreaStrip } from './AreaStrip.tsx'
import type { MapAsk } from './mapAsk.ts'
import { byWeight, shownNeighbours } from './neighboursView.ts'
import styles from './TodayPage.module.css'
import type { Morning } from './useMorning.ts'

type Props = { review: DayReview; field: DayField | null; morning: Morning; map: (ask: MapAsk) => ReactNode }

/** The map of the day, and the county means under it. */
export function MapPane({ review, field, morning, map }: Props) {
  const { words } = useWords()
  const { shown, chosen, evidence, whatIf, measure } = morning
  const doubtful = useMemo(
    () => new Set(review.docket.filter((row) => !row.decision).map((row) => row.readingId)),
    [review.docket],
  )
  return (
    <section className={styles.map} aria-labelledby="map-heading">
      <h2 id="map-heading" className="sr-only">
        {words.map}
      </h2>
      {map({
        day: review.day,
        roll: review.roll,
        doubtful,
        field,
        change: whatIf,
        chosenGaugeId: chosen?.gaugeId ?? null,
        hoveredGaugeId: shown.hoveredGaugeId,
        neighbours: evidence ? byWeight(evidence.neighbours).slice(0, shownNeighbours) : [],
        measure,
        onMeasure: shown.setMeasure,
        isohyets: shown.isohyets,
        onIsohyets: shown.setIsohyets,
        onChoose: (gaugeId) => morning.choose(gaugeId, null),
      })}
      <AreaStrip
        areas={field?.areas ?? review.areas}
        after={measure === 'change' ? (whatIf?.after.areas ?? null) : null}
      />
    </section>
  )
}
