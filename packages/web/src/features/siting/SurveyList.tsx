/** Surveys of a site, newest first; each can be laid on the plan, taken back, put back. */
import type { Site } from '@gaugewright/contract'
import { degrees, told } from '@gaugewright/drawings'
import type { YardPlan } from '@gaugewright/science'
import { Button } from '../../ui/Button.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import styles from './SitePage.module.css'

type Props = {
  site: Site
  language: 'en' | 'es'
  reportUrl: string
  onLoad: (plan: YardPlan) => void
  onWithdraw: (surveyId: string, undo: boolean) => void
  onSend: (() => void) | null
  isSent: boolean
}

export function SurveyList({ site, language, reportUrl, onLoad, onWithdraw, onSend, isSent }: Props) {
  const words = sitingWords[language].history
  const day = new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeZone: 'UTC' })
  return (
    <section className={styles.history} aria-label={words.title}>
      <h3>{words.title}</h3>
      {words.due[site.due] ? <p>▲ {words.due[site.due]}</p> : null}
      {site.surveys.length === 0 ? <p className={styles.soft}>{words.none}</p> : null}
      <ul>
        {site.surveys.map((survey) => (
          <li key={survey.id} data-withdrawn={survey.isTakenBack}>
            <p>
              <strong>{day.format(new Date(`${survey.surveyedOn}T00:00:00Z`))}</strong>
              {survey.by ? ` · ${survey.by}` : ''} ·{' '}
              {survey.exposure === null
                ? words.noGauge
                : `${told(words.class, { class: String(survey.exposure.class) })}, ${degrees(survey.exposure.worstDeg, language)}`}
              {survey.isTakenBack ? ` · ${words.withdrawn}` : ''}
            </p>
            {survey.note ? <p className={styles.soft}>{survey.note}</p> : null}
            {survey.photos.map((sha256) => (
              <img key={sha256} className={styles.thumb} src={`/api/photos/${sha256}`} alt="" loading="lazy" />
            ))}
            <div className={styles.acts}>
              <Button onClick={() => onLoad(survey.plan)}>{words.load}</Button>
              <Button look="quiet" onClick={() => onWithdraw(survey.id, survey.isTakenBack)}>
                {survey.isTakenBack ? words.restore : words.withdraw}
              </Button>
            </div>
          </li>
        ))}
      </ul>
      {site.surveys.some(({ isTakenBack }) => !isTakenBack) ? (
        <div className={styles.acts}>
          <a className={styles.linkButton} href={reportUrl} target="_blank" rel="noreferrer">
            {words.report}
          </a>
          {onSend === null ? null : <Button onClick={onSend}>{words.send}</Button>}
          <span role="status">{isSent ? words.sent : ''}</span>
        </div>
      ) : null}
    </section>
  )
}
