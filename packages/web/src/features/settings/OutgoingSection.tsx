import { problemFrom } from '../../api/problemError.ts'
import { Notice } from '../../ui/Notice.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import { MailForm } from './MailForm.tsx'
import { OutboxList } from './OutboxList.tsx'
import styles from './OutgoingSection.module.css'
import { troublesOf } from './outgoingView.ts'
import { RemindersForm } from './RemindersForm.tsx'
import { useOutgoing } from './useOutgoing.ts'

/** Mail and reminders: what keeps messages from going out, how they go out, and those that need somebody. */
export function OutgoingSection() {
  const { words } = useWords()
  const { outgoing: own } = words
  const desk = useOutgoing()
  if (!desk.isShown) return null
  const { data: settings } = desk.settings
  const { data: outbox } = desk.outbox
  const error = desk.settings.error ?? desk.outbox.error
  const hasTextUrl = settings?.reminders?.settings.isOn === true && settings.reminders.settings.textUrl !== null
  return (
    <section className={styles.section} aria-labelledby="outgoing-heading" data-testid="outgoing">
      <div>
        <h2 id="outgoing-heading">{own.heading}</h2>
        <p className={styles.soft}>{own.intro}</p>
        {outbox
          ? troublesOf(outbox, hasTextUrl, own).map((text) => (
              <p key={text} className={styles.trouble}>
                {text}
              </p>
            ))
          : null}
      </div>
      {error ? <Notice problem={problemFrom(error)} onRetry={() => void desk.settings.refetch()} /> : null}
      {desk.maySet && settings ? (
        <div className={styles.forms}>
          <MailForm desk={desk} settings={settings} />
          <RemindersForm desk={desk} settings={settings} />
        </div>
      ) : null}
      {outbox ? <OutboxList desk={desk} outbox={outbox} /> : null}
    </section>
  )
}
