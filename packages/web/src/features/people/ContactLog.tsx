/** What was exchanged with a person, newest first; a line is added in two keystrokes and taken back with one. */
import { contactWays } from '@gaugewright/contract'
import { useQuery } from '@tanstack/react-query'
import { type FormEvent, useState } from 'react'
import { addContact, contactsQuery, withdrawContact } from '../../api/people.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './PeoplePage.module.css'
import { usePersonAct } from './usePerson.ts'

const ways = contactWays.filter((way) => way !== 'letter')

export function ContactLog({ about }: { about: string }) {
  const { words, format } = useWords()
  const own = words.people
  const log = useQuery(contactsQuery(about))
  const add = usePersonAct(addContact, about)
  const withdraw = usePersonAct(withdrawContact, about)
  const [way, setWay] = useState<(typeof ways)[number]>('call')
  const [text, setText] = useState('')
  const submit = (event: FormEvent) => {
    event.preventDefault()
    add.mutate({ about, way, text, id: crypto.randomUUID() }, { onSuccess: () => setText('') })
  }
  const error = add.error ?? withdraw.error ?? log.error
  return (
    <section aria-label={own.log} className={styles.log}>
      <h3>{own.log}</h3>
      <form className={styles.contactForm} onSubmit={submit} aria-label={own.addContact}>
        <label>
          {own.way}
          <select value={way} onChange={(event) => setWay(event.target.value as typeof way)}>
            {ways.map((one) => (
              <option key={one} value={one}>
                {own.ways[one]}
              </option>
            ))}
          </select>
        </label>
        <label className={styles.grow}>
          {own.what}
          <input value={text} maxLength={4000} required onChange={(event) => setText(event.target.value)} />
        </label>
        <Button type="submit" disabled={add.isPending}>
          {own.add}
        </Button>
      </form>
      {error ? <Notice problem={problemFrom(error)} /> : null}
      {log.data === undefined ? null : log.data.contacts.length === 0 ? (
        <p className={styles.soft}>{own.noLog}</p>
      ) : (
        <ul className={styles.contacts} data-testid="contacts">
          {log.data.contacts.map((one) => (
            <li key={one.id} data-taken-back={one.isTakenBack}>
              <p>
                <strong>{own.ways[one.way]}</strong> · {format.instant(one.atUtc)}
                {one.by === '' ? '' : ` · ${one.by}`}
                {one.outgoing === null ? '' : ` · ${own.outgoing[one.outgoing.state] ?? one.outgoing.state}`}
                {one.isTakenBack ? ` · ${own.takenBack}` : ''}
              </p>
              <p className={styles.said}>{one.text}</p>
              {one.way === 'letter' ? null : (
                <Button
                  look="quiet"
                  onClick={() => withdraw.mutate({ about, contactId: one.id, undo: one.isTakenBack })}
                >
                  {one.isTakenBack ? own.redo : own.undo}
                </Button>
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
