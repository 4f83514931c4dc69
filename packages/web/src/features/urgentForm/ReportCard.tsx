import { fill } from '../../words/fill.ts'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import type { ReportOnPhone } from './reportsOnPhone.ts'
import { sayReport } from './sayReport.ts'
import type { UrgentSending } from './useUrgentSending.ts'

interface Props {
  report: ReportOnPhone
  sending: UrgentSending
  onMore?: () => void
}

/** One report and how far it is: on this phone, or received by the desk. Never silent about which. */
export function ReportCard({ report, sending, onMore }: Props) {
  const { words, form, language } = useFormInUse()
  const sentPhotos = report.photos.filter(({ state }) => state === 'received').length
  const isWaiting = report.state === 'waiting'
  return (
    <article className={`${styles.state} ${styles[report.state]}`} data-testid="report" data-state={report.state}>
      <p>{sayReport(report.filing, { words, unit: form.network.unit, language })}</p>
      <div role="status">
        <p className={styles.stateLine}>
          {report.state === 'received' ? '✓ ' : isWaiting ? '○ ' : '✕ '}
          {stateLine()}
        </p>
        {isWaiting && sending.outcome === 'no signal' ? <p>{words.onPhoneMore}</p> : null}
        {report.state === 'refused' && report.problem !== null ? (
          <p>{fill(words.refusedMore, { seen: report.problem.seen, advice: report.problem.advice })}</p>
        ) : null}
        {report.photos.length > 0 ? (
          <p>{fill(words.photosState, { received: sentPhotos, all: report.photos.length })}</p>
        ) : null}
      </div>
      <div className={styles.acts}>
        {isWaiting ? (
          <button type="button" className={styles.button} onClick={sending.tryNow} disabled={sending.isSending}>
            {words.tryNow}
          </button>
        ) : null}
        {onMore ? (
          <button type="button" className={styles.button} onClick={onMore}>
            {words.addMore}
          </button>
        ) : null}
      </div>
    </article>
  )

  function stateLine(): string {
    if (report.state === 'refused') return words.refused
    if (report.state === 'received') {
      const time = new Intl.DateTimeFormat(language, { timeStyle: 'short' }).format(new Date(report.receivedAtUtc!))
      return fill(words.received, { time })
    }
    if (sending.outcome === 'sign in') return words.signIn
    return sending.isSending ? words.sending : words.onPhone
  }
}
