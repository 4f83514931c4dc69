import type { UrgentNow, UrgentSettings } from '@gaugewright/contract'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { type FormEvent, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { postUrgentSettings, urgentKey, urgentQuery } from '../../api/urgent.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { UrgentDestinations } from './UrgentDestinations.tsx'
import { UrgentRule } from './UrgentRule.tsx'
import styles from './UrgentSection.module.css'
import { draftOf, gustUnit, settingsOf, type UrgentDraft } from './urgentSettingsView.ts'

/** What would change a warning, whom to call, where reports may go, and whether any may go without a person. */
export function UrgentSection() {
  const { words } = useWords()
  const list = useQuery(urgentQuery)
  return (
    <section className={styles.section} aria-labelledby="urgent-settings">
      <h2 id="urgent-settings">{words.urgent.settings.title}</h2>
      <p>{words.urgent.settings.intro}</p>
      {list.data ? (
        <UrgentForm key={JSON.stringify(list.data.settings)} now={list.data} />
      ) : list.error ? (
        <Notice problem={problemFrom(list.error)} onRetry={() => void list.refetch()} />
      ) : (
        <p role="status">{words.loading}</p>
      )}
    </section>
  )
}

function UrgentForm({ now }: { now: UrgentNow }) {
  const { words } = useWords()
  const say = words.urgent.settings
  const client = useQueryClient()
  const { unit } = now.network
  const [draft, setDraft] = useState(() => draftOf(now.settings, unit))
  const [wrong, setWrong] = useState<string | null>(null)
  const set = useMutation({
    mutationFn: postUrgentSettings,
    onSuccess: (settings: UrgentSettings) => {
      client.setQueryData<UrgentNow>(urgentKey, (old) => (old === undefined ? old : { ...old, settings }))
      void client.invalidateQueries({ queryKey: urgentKey })
    },
  })
  const change = (part: Partial<UrgentDraft>) => {
    setWrong(null)
    setDraft((old) => ({ ...old, ...part }))
  }
  const labels: Partial<Record<keyof UrgentDraft, string>> = {
    severeHail: fill(say.severeHail, { unit }),
    significantHail: fill(say.significantHail, { unit }),
    severeGust: fill(say.severeGust, { unit: gustUnit[unit] }),
    severeSnow: fill(say.severeSnow, { unit }),
    guidance: say.guidance,
    rule: say.rule,
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const read = settingsOf(draft, now.settings, unit)
    if ('wrong' in read) setWrong(fill(say.notNumber, { field: labels[read.wrong] ?? read.wrong }))
    else set.mutate(read.settings)
  }
  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      <div className={styles.fields}>
        {(['severeHail', 'significantHail', 'severeGust', 'severeSnow'] as const).map((name) => (
          <label key={name}>
            {labels[name]}
            <input
              inputMode="decimal"
              value={draft[name]}
              onChange={(event) => change({ [name]: event.target.value })}
            />
          </label>
        ))}
      </div>
      <fieldset className={styles.fields}>
        <legend>{say.guidance}</legend>
        {draft.guidance.map(({ minutes, amount }, index) => (
          <label key={minutes}>
            {fill(say.guidanceRow, { minutes, unit })}
            <input
              inputMode="decimal"
              value={amount}
              onChange={(event) =>
                change({
                  guidance: draft.guidance.map((row, at) =>
                    at === index ? { ...row, amount: event.target.value } : row,
                  ),
                })
              }
            />
          </label>
        ))}
      </fieldset>
      <div className={styles.fields}>
        {(
          [
            ['emergencyNumber', say.emergency, 40],
            ['officeName', say.office, 60],
            ['stateCode', say.state, 2],
          ] as const
        ).map(([name, label, most]) => (
          <label key={name}>
            {label}
            <input maxLength={most} value={draft[name]} onChange={(event) => change({ [name]: event.target.value })} />
          </label>
        ))}
      </div>
      <UrgentDestinations draft={draft} onChange={change} />
      <UrgentRule draft={draft} onChange={change} />
      {wrong === null ? null : <p role="alert">{wrong}</p>}
      {set.error ? <Notice problem={problemFrom(set.error)} onDismiss={() => set.reset()} /> : null}
      <div className={styles.acts}>
        <Button look="primary" type="submit" disabled={set.isPending}>
          {say.save}
        </Button>
        <span role="status">{set.isSuccess ? say.saved : ''}</span>
      </div>
    </form>
  )
}
