import { type FormEvent, useId, useRef, useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './RuleForm.module.css'
import { RuleThreshold } from './RuleThreshold.tsx'
import type { RuleDesk } from './useRule.ts'

/** What is being chosen: a rule or none, its threshold, why, and the act that sets it. */
export function RuleForm({ desk }: { desk: RuleDesk }) {
  const { words } = useWords()
  const { rule: own } = words
  const [whyMissing, setWhyMissing] = useState(false)
  const whyField = useRef<HTMLInputElement>(null)
  const noteId = useId()
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (!desk.isChanged || desk.isSetting) return
    const isMissing = desk.why.trim() === ''
    setWhyMissing(isMissing)
    if (isMissing) whyField.current?.focus()
    else desk.set()
  }
  const note = whyMissing ? own.whyMissing : desk.isDone ? own.done : desk.isChanged ? own.whyHint : own.unchanged
  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      <Choice
        label={own.mode}
        value={desk.isOn ? 'on' : 'off'}
        options={(['off', 'on'] as const).map((value) => ({ value, label: own.modes[value] }))}
        onChange={(mode) => desk.choose({ isOn: mode === 'on' })}
      />
      <RuleThreshold desk={desk} />
      <label className={styles.field}>
        {own.why}
        <input
          ref={whyField}
          type="text"
          maxLength={2000}
          autoComplete="off"
          value={desk.why}
          aria-invalid={whyMissing}
          aria-describedby={noteId}
          onChange={(event) => {
            setWhyMissing(false)
            desk.choose({ why: event.target.value })
          }}
        />
      </label>
      <p
        id={noteId}
        className={whyMissing ? styles.trouble : desk.isDone ? styles.done : styles.hint}
        role={whyMissing ? 'alert' : 'status'}
      >
        {note}
      </p>
      <Button look="primary" type="submit" aria-disabled={!desk.isChanged || desk.isSetting}>
        {desk.isOn ? own.set : own.setOff}
      </Button>
    </form>
  )
}
