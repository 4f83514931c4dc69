import { damages } from '@gaugewright/contract'
import { type FormEvent, useId, useState } from 'react'
import { newUuid } from '../../api/urgentForm/newUuid.ts'
import { FloodingMore } from './FloodingMore.tsx'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import { HailMore } from './HailMore.tsx'
import { draftFrom, seenOf, troubleWith } from './moreDraft.ts'
import { SomeOf, YesNo } from './Options.tsx'
import { PhotoField } from './PhotoField.tsx'
import type { ReportOnPhone } from './reportsOnPhone.ts'
import { TimesField } from './TimesField.tsx'
import { makeFiling, type Seen } from './urgentDraft.ts'
import type { UrgentSending } from './useUrgentSending.ts'
import { WindMore } from './WindMore.tsx'

/** What may follow once the first words are on their way: sent as a filing that adds to the report. */
export function MoreForm({ report, sending }: { report: ReportOnPhone; sending: UrgentSending }) {
  const { words } = useFormInUse()
  const [draft, setDraft] = useState(() => draftFrom(report.filing))
  const [isHalfHour, setHalfHour] = useState<boolean | null>(null)
  const [isAdded, setAdded] = useState(false)
  const remarkId = useId()
  const trouble = troubleWith(draft, Date.now())
  const { seen } = draft
  const change = (next: Partial<typeof draft>) => {
    setAdded(false)
    setDraft({ ...draft, ...next })
  }
  const onSeen = (next: Seen) => change({ seen: next })
  const more = { onSeen, isHalfHour, onHalfHour: setHalfHour }

  const submit = async (event: FormEvent) => {
    event.preventDefault()
    if (trouble !== null) return
    const { where, by, seenAtUtc } = report.filing
    const photoIds = report.photos.flatMap(({ sha256 }) => sha256 ?? [])
    const filing = makeFiling(
      {
        sender: { where, by },
        seen: seenOf(draft, Date.now()),
        seenAtUtc,
        remark: draft.remark.trim() === '' ? null : draft.remark.trim(),
        photoIds,
        updates: report.reportId,
      },
      newUuid,
      new Date().toISOString(),
    )
    await sending.file(filing)
    setAdded(true)
  }

  return (
    <form onSubmit={(event) => void submit(event).catch(() => undefined)} noValidate>
      <h2 className={styles.heading}>{words.moreTitle}</h2>
      <p className={styles.hint}>{words.moreHint}</p>
      <YesNo
        label={words.goingOn[seen.kind]}
        value={seen.isGoingOn ?? null}
        onChange={(isGoingOn) => onSeen({ ...seen, isGoingOn })}
        words={words}
      />
      {seen.kind === 'hail' ? <HailMore {...more} seen={seen} /> : null}
      {seen.kind === 'flooding' ? <FloodingMore {...more} seen={seen} /> : null}
      {seen.kind === 'wind' ? <WindMore {...more} seen={seen} /> : null}
      <TimesField
        began={draft.began}
        ended={draft.ended}
        onBegan={(began) => change({ began })}
        onEnded={(ended) => change({ ended })}
        isEndShown={seen.isGoingOn !== true}
      />
      {trouble === 'ends early' ? (
        <p className={styles.trouble} role="alert">
          {words.endedEarly}
        </p>
      ) : null}
      <SomeOf
        label={words.damage}
        values={seen.damage ?? []}
        options={damages.map((damage) => ({ value: damage, label: words.damages[damage] }))}
        onChange={(damage) => onSeen({ ...seen, damage })}
      />
      <div className={styles.field}>
        <label className={styles.label} htmlFor={remarkId}>
          {words.remark}
        </label>
        <textarea
          id={remarkId}
          rows={3}
          maxLength={2000}
          value={draft.remark}
          onChange={(event) => change({ remark: event.target.value })}
        />
      </div>
      <PhotoField count={report.photos.length} onPhoto={(jpeg) => sending.addPhoto(report.reportId, jpeg)} />
      <button type="submit" className={`${styles.button} ${styles.primary}`}>
        {words.sendMore}
      </button>
      <p role="status" className={styles.hint}>
        {isAdded ? words.sentMore : null}
      </p>
    </form>
  )
}
