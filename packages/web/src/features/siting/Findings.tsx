/** What follows from the plan as it stands: class, skyline, obstacles, rim, hazards, wind. Recomputed while the gauge is dragged. */
import {
  bettermentText,
  degrees,
  hazardText,
  type LengthUnit,
  lengthText,
  obstacleName,
  ratioText,
  reasonText,
  rimText,
  SkylineDrawing,
  siteWords,
  told,
  windText,
} from '@gaugewright/drawings'
import {
  exposureClass,
  hazardsAt,
  rimAdvice,
  skylineAt,
  spacingRules,
  windCaution,
  type YardPlan,
} from '@gaugewright/science'
import { useMemo, useState } from 'react'
import { useWidth } from '../../hooks/useWidth.ts'
import { sitingWords } from '../../words/sitingWords.ts'
import { LengthField } from './LengthField.tsx'
import styles from './SitePage.module.css'

type Props = { plan: YardPlan; language: 'en' | 'es'; unit: LengthUnit }

const USUAL_WIND_M_PER_S = 4
const mphPer = 1 / 0.44704

export function Findings({ plan, language, unit }: Props) {
  const words = sitingWords[language]
  const shared = siteWords[language]
  const say = { language, unit }
  const [wind, setWind] = useState(USUAL_WIND_M_PER_S)
  const [figure, widthPx] = useWidth<HTMLElement>(560)
  const { gauge } = plan
  const told0 = useMemo(() => {
    if (gauge === null) return null
    const skyline = skylineAt(plan, gauge.at, gauge.rimM)
    return {
      skyline,
      exposure: exposureClass(skyline, { slopeDeg: plan.slopeDeg, hasWindShield: gauge.hasWindShield }),
      hazards: hazardsAt(plan, gauge.at),
      rim: rimAdvice(plan, gauge.at, gauge.rimM),
      spacing: new Map(spacingRules(skyline).map((one) => [one.obstacleId, one])),
    }
  }, [plan, gauge])
  if (told0 === null || gauge === null) return <p>{words.notPlaced}</p>
  const { skyline, exposure, hazards, rim, spacing } = told0
  const length = (metres: number) => lengthText(metres, unit, language)
  const short = (metres: number) => (metres === 0 ? shared.met : told(shared.missing, { distance: length(metres) }))
  const rows = [...skyline.obstacles].sort((a, b) => b.elevationDeg - a.elevationDeg)
  return (
    <div className={styles.findings}>
      <div className={styles.class} data-class={exposure.class} data-testid="exposure-class">
        <span className={styles.classNumber} aria-hidden="true">
          {exposure.class}
        </span>
        <div>
          <p className={styles.classTitle}>
            {told(shared.classTitle, { class: String(exposure.class) })}: {shared.classNames[exposure.class]}
          </p>
          <p>{shared.added[exposure.class]}</p>
        </div>
      </div>
      <ul className={styles.reasons}>
        {exposure.reasons.map((reason) => (
          <li key={JSON.stringify(reason)}>{reasonText(reason, plan, say)}</li>
        ))}
        {exposure.betterments.map((one) => (
          <li key={one.obstacleId} className={styles.better}>
            {bettermentText(one, plan, say)}
          </li>
        ))}
        {exposure.isSlopeKnown ? null : <li className={styles.soft}>{shared.slopeUnknown}</li>}
      </ul>
      <figure className={styles.skyline} ref={figure}>
        <SkylineDrawing
          skyline={skyline}
          plan={plan}
          language={language}
          widthPx={Math.min(640, Math.max(280, widthPx))}
        />
        <figcaption>
          {told(words.sky, {
            angle: degrees(skyline.worstDeg, language),
            sky: `${Math.round(skyline.blockedShare * 100)} %`,
          })}
        </figcaption>
      </figure>
      {rows.length === 0 ? null : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table scrolls by keyboard
        <section className={styles.scroll} aria-label={words.obstaclesTable} tabIndex={0}>
          <table>
            <thead>
              <tr>
                {shared.columns.map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((one) => (
                <tr key={one.obstacleId}>
                  <th scope="row">{obstacleName(plan, one.obstacleId, language)}</th>
                  <td>{length(one.distanceM)}</td>
                  <td>{one.aboveRimM > 0 ? length(one.aboveRimM) : shared.notAbove}</td>
                  <td>{ratioText(one.ratio, language)}</td>
                  <td>{degrees(one.elevationDeg, language)}</td>
                  <td>{short(spacing.get(one.obstacleId)?.openMissingM ?? 0)}</td>
                  <td>{short(spacing.get(one.obstacleId)?.builtUpMissingM ?? 0)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      <p>
        {rimText(rim, say)} {shared.rimSnow}
      </p>
      {hazards.length === 0 ? (
        <p>{shared.noHazard}</p>
      ) : (
        <ul className={styles.hazards}>
          {hazards.map((hazard) => (
            <li key={JSON.stringify([hazard.kind, hazard.itemId])}>▲ {hazardText(hazard, plan, say)}</li>
          ))}
        </ul>
      )}
      <section className={styles.wind} aria-label={shared.windTitle}>
        <h3>{shared.windTitle}</h3>
        <LengthField
          label={words.windSpeed}
          value={unit === 'ft' ? wind * mphPer : wind}
          unit={unit === 'ft' ? 'mph' : 'm/s'}
          onChange={(typed) => setWind(Math.min(40, Math.max(0, unit === 'ft' ? typed / mphPer : typed)))}
        />
        <p>{windText(windCaution(wind, Math.max(0.1, gauge.rimM), skyline.meanDeg, gauge.hasWindShield), wind, say)}</p>
      </section>
    </div>
  )
}
