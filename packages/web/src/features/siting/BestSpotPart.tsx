/** Finds where the gauge should stand, shows every place of the yard, and says why the best three are the best. */
import { degrees, type LengthUnit, obstacleName, told } from '@gaugewright/drawings'
import { type Spot, skylineAt } from '@gaugewright/science'
import { Button } from '../../ui/Button.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import { HEAT_TOP_DEG, heatColour } from './heatColour.ts'
import { round } from './planItems.ts'
import styles from './SitePage.module.css'
import type { Search } from './useBestSpots.ts'
import type { EditedPlan } from './usePlan.ts'

type Props = {
  edited: EditedPlan
  search: Search
  onFind: () => void
  onClear: () => void
  language: 'en' | 'es'
  unit: LengthUnit
  hasFaults: boolean
}

export function BestSpotPart({ edited, search, onFind, onClear, language, hasFaults }: Props) {
  const words = sitingWords[language].best
  const { plan } = edited
  const now = plan.gauge === null ? null : skylineAt(plan, plan.gauge.at, plan.gauge.rimM).worstDeg
  const put = (spot: Spot) =>
    edited.set({
      ...plan,
      gauge: {
        rimM: plan.gauge?.rimM ?? 0.6,
        hasWindShield: plan.gauge?.hasWindShield ?? false,
        at: { xM: round(spot.at.xM), yM: round(spot.at.yM) },
      },
    })
  return (
    <div className={styles.best}>
      <Button
        look="primary"
        onClick={onFind}
        disabled={hasFaults || plan.outline.length < 3 || search.state === 'working'}
      >
        {words.find}
      </Button>
      {search.state === 'working' ? (
        <p role="status">
          {words.working} <progress value={search.share} max={1} aria-label={words.working} />
        </p>
      ) : null}
      {search.state === 'found' ? (
        <>
          <Legend label={words.legend} language={language} />
          {search.found.spots.length === 0 ? (
            <p role="status">{told(words.none, counts(search.found.cells))}</p>
          ) : (
            <ol className={styles.spots} data-testid="best-spots">
              {search.found.spots.map((spot, index) => (
                <li key={`${spot.at.xM} ${spot.at.yM}`}>
                  <p>
                    <strong>{told(words.spot, { number: String(index + 1) })}</strong>:{' '}
                    {spot.worst === null
                      ? told(words.toldOpen, { class: String(spot.class) })
                      : told(words.told, {
                          class: String(spot.class),
                          angle: degrees(spot.worstDeg, language),
                          name: obstacleName(plan, spot.worst.obstacleId, language),
                          sky: `${Math.round(spot.blockedShare * 100)} %`,
                        })}
                    {now !== null && now - spot.worstDeg >= 1
                      ? `; ${told(words.gain, { angle: degrees(now - spot.worstDeg, language) })}`
                      : ''}
                  </p>
                  <Button onClick={() => put(spot)}>{words.put}</Button>
                </li>
              ))}
            </ol>
          )}
          <p className={styles.soft}>
            {told(words.took, { count: String(search.found.cells.inside), ms: String(Math.round(search.ms)) })}{' '}
            <Button look="quiet" onClick={onClear}>
              {words.hide}
            </Button>
          </p>
        </>
      ) : null}
    </div>
  )
}

function counts(cells: { inside: number; inObstacle: number; nearHazard: number }): Record<string, string> {
  return { inside: String(cells.inside), inObstacle: String(cells.inObstacle), nearHazard: String(cells.nearHazard) }
}

function Legend({ label, language }: { label: string; language: 'en' | 'es' }) {
  const steps = [0, 15, 26.6, 45, 60, HEAT_TOP_DEG]
  return (
    <figure className={styles.legend}>
      <figcaption>{label}</figcaption>
      <ol>
        {steps.map((angle) => (
          <li key={angle}>
            <svg width="22" height="14" aria-hidden="true">
              <rect width="22" height="14" fill={`rgb(${heatColour(angle).join(' ')})`} stroke="var(--line-strong)" />
            </svg>
            {degrees(angle, language, 1)}
          </li>
        ))}
      </ol>
    </figure>
  )
}
