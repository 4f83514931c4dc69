/** @jsxRuntime automatic */
/** One page about a site, to print or to send: plan, skyline, class with its reasons, obstacles, advice, history. */
import {
  exposureClass,
  hazardsAt,
  rimAdvice,
  skylineAt,
  spacingRules,
  windCaution,
  type YardPlan,
} from '@gaugewright/science'
import { Paper } from '../paper/Paper.tsx'
import { type LengthUnit, lengthText } from './length.ts'
import { PlanDrawing } from './PlanDrawing.tsx'
import { SkylineDrawing } from './SkylineDrawing.tsx'
import {
  bettermentText,
  degrees,
  hazardText,
  obstacleName,
  ratioText,
  reasonText,
  rimText,
  windText,
} from './siteSentences.ts'
import { siteWords, told } from './siteWords.ts'

export interface SiteReportProps {
  language: 'en' | 'es'
  unit: LengthUnit
  /** Of the gauge or the person. */
  name: string
  network: string
  survey: { surveyedOn: string; by: string; note: string; plan: YardPlan } | null
  /** Newest first. */
  history: { surveyedOn: string; class: number | null; worstDeg: number | null; blockedShare: number | null }[]
}

/** Mean wind of an ordinary day over open ground: for the caution alone. */
const USUAL_WIND_M_PER_S = 4
const MOST_OBSTACLES = 10

export function SiteReport({ language, unit, name, network, survey, history }: SiteReportProps) {
  const words = siteWords[language]
  const say = { language, unit }
  const day = (iso: string) =>
    new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(`${iso}T00:00:00Z`))
  const title = told(words.report.title, { name })
  return (
    <Paper language={language} title={title}>
      <h1>{title}</h1>
      <p className="small">{network}</p>
      {survey === null ? (
        <p>{words.report.none}</p>
      ) : (
        <>
          <p>
            {told(words.report.surveyed, {
              day: day(survey.surveyedOn),
              by: survey.by === '' ? '' : told(words.report.by, { name: survey.by }),
            })}
          </p>
          <Body survey={survey} say={say} />
        </>
      )}
      {history.length > 0 ? (
        <>
          <h2>{words.report.earlier}</h2>
          <ul>
            {history.slice(0, 6).map(({ surveyedOn, class: exposure, worstDeg, blockedShare }) => (
              <li key={surveyedOn}>
                {day(surveyedOn)}
                {exposure === null || worstDeg === null || blockedShare === null
                  ? ''
                  : `: ${told(words.classTitle, { class: String(exposure) })}, ${told(words.report.worst, { angle: degrees(worstDeg, language), sky: `${Math.round(blockedShare * 100)} %` })}`}
              </li>
            ))}
          </ul>
        </>
      ) : null}
      <p className="caution">{words.safety}</p>
      <p className="small">{words.report.private}</p>
    </Paper>
  )
}

function Body({
  survey,
  say,
}: {
  survey: NonNullable<SiteReportProps['survey']>
  say: { language: 'en' | 'es'; unit: LengthUnit }
}) {
  const { language, unit } = say
  const words = siteWords[language]
  const { plan, note } = survey
  if (plan.gauge === null) {
    return (
      <figure>
        <PlanDrawing plan={plan} language={language} unit={unit} />
      </figure>
    )
  }
  const { at, rimM, hasWindShield } = plan.gauge
  const skyline = skylineAt(plan, at, rimM)
  const exposure = exposureClass(skyline, { slopeDeg: plan.slopeDeg, hasWindShield })
  const hazards = hazardsAt(plan, at)
  const rim = rimAdvice(plan, at, rimM)
  const caution = windCaution(USUAL_WIND_M_PER_S, rimM, skyline.meanDeg, hasWindShield)
  const spacing = new Map(spacingRules(skyline).map((one) => [one.obstacleId, one]))
  const length = (metres: number) => lengthText(metres, unit, language)
  const short = (metres: number) => (metres === 0 ? words.met : told(words.missing, { distance: length(metres) }))
  const obstacles = [...skyline.obstacles].sort((a, b) => b.elevationDeg - a.elevationDeg).slice(0, MOST_OBSTACLES)
  return (
    <>
      <table>
        <tbody>
          <tr>
            <td style={{ width: '42%', border: 0 }}>
              <PlanDrawing plan={plan} language={language} unit={unit} widthPx={270} />
            </td>
            <td style={{ border: 0 }}>
              <h2 style={{ marginTop: 0 }}>
                {told(words.classTitle, { class: String(exposure.class) })}: {words.classNames[exposure.class]}
              </h2>
              <p>{words.added[exposure.class]}</p>
              <ul>
                {exposure.reasons.slice(0, 3).map((reason) => (
                  <li key={JSON.stringify(reason)}>{reasonText(reason, plan, say)}</li>
                ))}
              </ul>
              {exposure.betterments.slice(0, 2).map((one) => (
                <p key={one.obstacleId}>{bettermentText(one, plan, say)}</p>
              ))}
              {exposure.isSlopeKnown ? null : <p className="small">{words.slopeUnknown}</p>}
              <p>
                {told(words.report.rim, { height: length(rimM) })} {rimText(rim, say)} {words.rimSnow}
              </p>
            </td>
          </tr>
        </tbody>
      </table>
      <figure>
        <SkylineDrawing skyline={skyline} plan={plan} language={language} heightPx={190} />
        <figcaption>
          {words.skyline}:{' '}
          {told(words.report.worst, {
            angle: degrees(skyline.worstDeg, language),
            sky: `${Math.round(skyline.blockedShare * 100)} %`,
          })}
        </figcaption>
      </figure>
      {obstacles.length > 0 ? (
        <table>
          <thead>
            <tr>
              {words.columns.map((column, index) => (
                <th key={column} scope="col" className={index > 0 ? 'number' : ''}>
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {obstacles.map((one) => (
              <tr key={one.obstacleId}>
                <td>{obstacleName(plan, one.obstacleId, language)}</td>
                <td className="number">{length(one.distanceM)}</td>
                <td className="number">{one.aboveRimM > 0 ? length(one.aboveRimM) : words.notAbove}</td>
                <td className="number">{ratioText(one.ratio, language)}</td>
                <td className="number">{degrees(one.elevationDeg, language)}</td>
                <td className="number">{short(spacing.get(one.obstacleId)?.openMissingM ?? 0)}</td>
                <td className="number">{short(spacing.get(one.obstacleId)?.builtUpMissingM ?? 0)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      <p>{hazards.length === 0 ? words.noHazard : hazards.map((one) => hazardText(one, plan, say)).join('. ')}</p>
      <p className="small">
        {words.windTitle}: {windText(caution, USUAL_WIND_M_PER_S, say)}
      </p>
      {note === '' ? null : (
        <p>
          {words.report.note}: {note}
        </p>
      )}
    </>
  )
}
