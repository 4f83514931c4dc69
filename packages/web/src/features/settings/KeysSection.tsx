import type { Key } from '@gaugewright/contract'
import { useState } from 'react'
import { interfacePagePath } from '../../api/keys.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import section from './AccessSection.module.css'
import { AddKeyForm } from './AddKeyForm.tsx'
import list from './PeopleTable.module.css'
import { RevokeKeyDialog } from './RevokeKeyDialog.tsx'
import { useKeys } from './useKeys.ts'

/** Keys for programs: who has one, what it opens and when it was last used; make one, revoke one. */
export function KeysSection() {
  const { words, format } = useWords()
  const { senderKeys: own } = words
  const desk = useKeys()
  const [revoking, setRevoking] = useState<Key | null>(null)
  const [done, setDone] = useState('')
  if (!desk.isShown) return null
  const day = (text: string) => format.dayShort(text.slice(0, 10))
  const wordKey = (key: Key): string[] => [
    fill(own.begins, { start: key.start }),
    fill(own.madeOn, { day: day(key.madeAtUtc) }),
    key.lastUsedOn === null ? own.neverUsed : fill(own.lastUsed, { day: day(key.lastUsedOn) }),
    ...(key.revokedAtUtc === null ? [] : [fill(own.revokedOn, { day: day(key.revokedAtUtc) })]),
  ]
  return (
    <section className={section.section} aria-labelledby="keys-heading">
      <div>
        <h2 id="keys-heading">{own.heading}</h2>
        <p className={section.soft}>{own.intro}</p>
        <p>
          <a href={interfacePagePath}>{own.description}</a>
        </p>
      </div>
      {desk.keys.error ? (
        <Notice problem={problemFrom(desk.keys.error)} onRetry={() => void desk.keys.refetch()} />
      ) : null}
      <div>
        <p role="status" className={list.done}>
          {done}
        </p>
        {desk.keys.data?.keys.length === 0 ? <p>{own.none}</p> : null}
        <ul className={list.people} data-testid="keys">
          {desk.keys.data?.keys.map((key) => (
            <li key={key.id}>
              <div className={list.who}>
                <b>{key.sender}</b>
                <span>{key.scopes.map((scope) => own.scopes[scope]).join(' · ')}</span>
                <span>{wordKey(key).join(' · ')}</span>
              </div>
              {key.revokedAtUtc === null ? (
                <Button onClick={() => setRevoking(key)} aria-label={fill(own.revokeOf, { sender: key.sender })}>
                  {own.revoke}
                </Button>
              ) : null}
            </li>
          ))}
        </ul>
      </div>
      <AddKeyForm desk={desk} />
      {revoking === null ? null : (
        <RevokeKeyDialog
          desk={desk}
          of={revoking}
          onDone={() => setDone(fill(own.revoked, { sender: revoking.sender }))}
          onClose={() => setRevoking(null)}
        />
      )}
    </section>
  )
}
