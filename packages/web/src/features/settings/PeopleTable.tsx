import type { Person } from '@gaugewright/contract'
import { useState } from 'react'
import { exportPersonPath } from '../../api/access.ts'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { ChangePersonDialog } from './ChangePersonDialog.tsx'
import { ForgetDialog } from './ForgetDialog.tsx'
import { PasswordDialog } from './PasswordDialog.tsx'
import styles from './PeopleTable.module.css'
import { RoleOfPerson } from './RoleOfPerson.tsx'
import type { AccessDesk } from './useAccess.ts'

type Props = { desk: AccessDesk; people: readonly Person[] }

/** Everybody, with what may be done to each; on a narrow screen each person is a card. */
export function PeopleTable({ desk, people }: Props) {
  const { words, format } = useWords()
  const { access: own } = words
  const [shown, setShown] = useState<{ what: 'change' | 'password' | 'forget'; person: Person } | null>(null)
  const [done, setDone] = useState('')
  return (
    <>
      <p role="status" className={styles.done}>
        {done}
      </p>
      {people.length === 0 ? <p>{own.nobody}</p> : null}
      <ul className={styles.people} data-testid="people">
        {people.map((person) => (
          <li key={person.id}>
            <div className={styles.who}>
              <b>{person.name}</b>
              <span>{[person.mail, person.phone].filter((one) => one !== null).join(' · ')}</span>
              <span>
                {own.by}: {waysOf(person, own.byWays)} · {own.seen}:{' '}
                {person.lastSeenOn === null ? own.never : format.dayShort(person.lastSeenOn)}
              </span>
            </div>
            <RoleOfPerson desk={desk} person={person} />
            <div className={styles.acts}>
              <Button
                aria-label={fill(own.changeOf, { name: person.name })}
                onClick={() => setShown({ what: 'change', person })}
              >
                {own.change}
              </Button>
              {person.mail === null ? null : (
                <Button
                  aria-label={fill(own.setPasswordFor, { name: person.name })}
                  onClick={() => setShown({ what: 'password', person })}
                >
                  {own.setPassword}
                </Button>
              )}
              <a
                className={styles.link}
                href={exportPersonPath(person.id)}
                download={`${person.name}.json`}
                aria-label={fill(own.exportHeldOf, { name: person.name })}
              >
                {own.exportHeld}
              </a>
              <Button
                look="quiet"
                aria-label={fill(own.forgetOf, { name: person.name })}
                onClick={() => setShown({ what: 'forget', person })}
              >
                {own.forget}
              </Button>
            </div>
          </li>
        ))}
      </ul>
      {shown?.what === 'change' ? (
        <ChangePersonDialog
          desk={desk}
          person={shown.person}
          onDone={(name) => setDone(fill(own.changed, { name }))}
          onClose={() => setShown(null)}
        />
      ) : null}
      {shown?.what === 'password' ? (
        <PasswordDialog desk={desk} person={shown.person} onClose={() => setShown(null)} />
      ) : null}
      {shown?.what === 'forget' ? (
        <ForgetDialog
          desk={desk}
          person={shown.person}
          onDone={() => setDone(fill(own.forgotten, { name: shown.person.name }))}
          onClose={() => setShown(null)}
        />
      ) : null}
    </>
  )
}

function waysOf(
  { mail, role, hasPassword }: Person,
  ways: { password: string; link: string; nothing: string },
): string {
  const found = [hasPassword ? ways.password : '', role === 'observer' && mail !== null ? ways.link : '']
  return found.filter((way) => way !== '').join(', ') || ways.nothing
}
