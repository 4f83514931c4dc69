import type { PassOnForm, UrgentItem, UrgentSettings } from '@gaugewright/contract'
import { useQuery } from '@tanstack/react-query'
import { useEffect, useRef, useState } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { codedQuery } from '../../api/urgent.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './Dialogs.module.css'
import { whatText } from './urgentView.ts'
import type { UrgentDesk } from './useUrgent.ts'

type Props = { item: UrgentItem; settings: UrgentSettings; desk: UrgentDesk }

/** The coded text to look through, and the ways it may go. Nothing goes before a button is pressed. */
export function PassOnDialog({ item, settings, desk }: Props) {
  const own = useWords()
  const say = own.words.urgent
  const [form, setForm] = useState<PassOnForm>('storm report')
  const [copyFails, setCopyFails] = useState(false)
  const coded = useQuery(codedQuery(item.report.id, form))
  const text = useRef<HTMLPreElement>(null)
  const acts = useRef<HTMLDivElement>(null)
  const isReady = coded.data !== undefined && !desk.isActing
  const isThere = coded.data !== undefined
  // Once, when the text is there to be looked through: Enter then copies it, rather than closing.
  useEffect(() => {
    if (isThere) acts.current?.querySelector('button')?.focus()
  }, [isThere])
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(coded.data?.text ?? '')
      desk.passOn(form, null)
    } catch {
      setCopyFails(true)
      if (text.current) getSelection()?.selectAllChildren(text.current)
    }
  }
  const gone = item.passedOn.map(({ to, form: as }) => `${to ?? say.forms[as]}`)
  return (
    <Dialog
      wide
      title={fill(say.passTitle, { what: whatText(item.report.seen, own) })}
      closeLabel={own.words.close}
      onClose={() => desk.open(null)}
    >
      <div className={styles.body}>
        <Choice
          label={say.passForm}
          value={form}
          options={(['storm report', 'SHEF'] as const).map((value) => ({ value, label: say.forms[value] }))}
          onChange={setForm}
        />
        <p>{say.passLook}</p>
        {gone.length > 0 ? <p>{fill(say.passedAlready, { to: gone.join(', ') })}</p> : null}
        {coded.error ? <Notice problem={problemFrom(coded.error)} /> : null}
        {coded.data ? (
          // biome-ignore lint/a11y/noNoninteractiveTabindex: a long line is scrolled by keyboard
          <pre ref={text} className={styles.text} tabIndex={0} data-testid="coded-text">
            {coded.data.text}
          </pre>
        ) : null}
        {coded.data && coded.data.cut.length > 0 ? (
          <p>{fill(say.passCut, { fields: coded.data.cut.join(', ') })}</p>
        ) : null}
        {copyFails ? <p role="alert">{say.passCopyFails}</p> : null}
        {desk.actError ? <Notice problem={problemFrom(desk.actError)} onDismiss={desk.forgetError} /> : null}
        <div className={styles.acts} ref={acts}>
          <Button look="primary" disabled={!isReady} onClick={() => void copy()}>
            {say.passCopy}
          </Button>
          {settings.destinations.map(({ name }) => (
            <Button key={name} disabled={!isReady} onClick={() => desk.passOn(form, name)}>
              {fill(say.passTo, { name })}
            </Button>
          ))}
        </div>
        {settings.destinations.length === 0 ? <p className={styles.soft}>{say.passNowhere}</p> : null}
      </div>
    </Dialog>
  )
}
