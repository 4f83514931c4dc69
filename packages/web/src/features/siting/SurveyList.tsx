/** Surveys of a site, newest first; each can be laid on the plan, taken back, put back. */

import type { Site, SurveyPhoto } from '@gaugewright/contract'
import { degrees, told } from '@gaugewright/drawings'
import type { YardPlan } from '@gaugewright/science'
import { isDrawn } from '@gaugewright/science'
import { photoPath } from '../../api/photos/surveyPhotos.ts'
import { Button } from '../../ui/Button.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import styles from './SitePage.module.css'

type Props = {
  site: Site
  language: 'en' | 'es'
  reportUrl: string
  onLoad: (plan: YardPlan) => void
  onMeasure: (photo: SurveyPhoto) => void
  onWithdraw: (surveyId: string, undo: boolean) => void
  onSend: (() => void) | null
  /** Null where nobody can be asked for a new survey. */
  onAsk: (() => void) | null
  isSent: boolean
}

export function SurveyList({ site, language, reportUrl, onLoad, onMeasure, onWithdraw, onSend, onAsk, isSent }: Props) {
  const words = sitingWords[language].history
  const day = new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeZone: 'UTC' })
  return (
    <section className={styles.history} aria-label={words.title}>
      <h3>{words.title}</h3>
      {words.due[site.due] ? <p>▲ {words.due[site.due]}</p> : null}
      {onAsk === null || site.due === 'asked' ? null : (
        <div className={styles.acts}>
          <Button onClick={onAsk}>{words.ask}</Button>
        </div>
      )}
      {site.surveys.length === 0 ? <p className={styles.soft}>{words.none}</p> : null}
      <ul>
        {site.surveys.map((survey) => (
          <li key={survey.id} data-withdrawn={survey.isTakenBack}>
            <p>
              <strong>{day.format(new Date(`${survey.surveyedOn}T00:00:00Z`))}</strong>
              {survey.by ? ` · ${survey.by}` : ''} ·{' '}
              {!isDrawn(survey.plan)
                ? words.photosAlone
                : survey.exposure === null
                  ? words.noGauge
                  : `${told(words.class, { class: String(survey.exposure.class) })}, ${degrees(survey.exposure.worstDeg, language)}`}
              {survey.isTakenBack ? ` · ${words.withdrawn}` : ''}
            </p>
            {survey.note ? <p className={styles.soft}>{survey.note}</p> : null}
            {survey.photos.map((photo, index) => (
              <button
                key={photo.sha256}
                type="button"
                className={styles.photoButton}
                aria-label={told(words.measure, { number: String(index + 1) })}
                onClick={() => onMeasure(photo)}
              >
                <img className={styles.thumb} src={photoPath(photo.sha256)} alt="" loading="lazy" />
              </button>
            ))}
            <div className={styles.acts}>
              {!isDrawn(survey.plan) ? null : <Button onClick={() => onLoad(survey.plan)}>{words.load}</Button>}
              <Button look="quiet" onClick={() => onWithdraw(survey.id, survey.isTakenBack)}>
                {survey.isTakenBack ? words.restore : words.withdraw}
              </Button>
            </div>
          </li>
        ))}
      </ul>
      {site.surveys.some(({ isTakenBack, plan }) => !isTakenBack && isDrawn(plan)) ? (
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
