/** Who is going quiet and whom to thank, with words to send; each answered with one press, and taken back with another. */
import type { LetterStep, OccasionRow, QuietRow } from '@gaugewright/contract'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { type ReactNode, useState } from 'react'
import { answerOccasion, holdingQuery, networkLetterUrl } from '../../api/holding.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { holdingWords } from '../../words/holdingWords.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { DayStrip } from './DayStrip.tsx'
import styles from './Holding.module.css'

/** A letter to write on a row; `onSent` when it is in the outbox. */
export interface LetterAsked {
  about: string
  step: LetterStep
  occasion?: string
  onSent: () => void
}

type Props = { onGo: (code: string) => void; onWrite: (letter: LetterAsked) => void }

export function HoldingLists({ onGo, onWrite }: Props) {
  const { words, format, language } = useWords()
  const own = holdingWords[language]
  const client = useQueryClient()
  const holding = useQuery(holdingQuery)
  const answer = useMutation({
    mutationFn: answerOccasion,
    onSuccess: (next) => client.setQueryData(holdingQuery.queryKey, next),
  })
  const error = holding.error ?? answer.error
  const { data } = holding
  if (data === undefined)
    return error ? (
      <Notice problem={problemFrom(error)} onRetry={() => void holding.refetch()} />
    ) : (
      <p role="status">{words.loading}</p>
    )
  const acts = (row: QuietRow | OccasionRow) => {
    const onAnswer = (how: 'sent' | 'not now') => answer.mutate({ code: row.code, key: row.key, how })
    const letter = 'kind' in row ? { step: 'thanks' as const, occasion: row.text } : { step: 'missed' as const }
    const write = (personId: string) =>
      onWrite({ about: `person ${personId}`, ...letter, onSent: () => onAnswer('sent') })
    return (
      <Acts text={row.text} onAnswer={onAnswer} onWrite={row.personId === null ? null : () => write(row.personId!)} />
    )
  }
  return (
    <div className={styles.lists}>
      {error ? <Notice problem={problemFrom(error)} /> : null}
      <details open={data.quiet.length > 0} className={styles.box}>
        <summary>
          {own.quiet} ({data.quiet.length})
        </summary>
        {data.quiet.length === 0 ? <p>{own.quietNone}</p> : <p className={styles.soft}>{own.key}</p>}
        <ul data-testid="quiet">
          {data.quiet.map((row) => (
            <Row key={`${row.gaugeId} ${row.key}`} row={row} onGo={onGo} acts={acts(row)}>
              <DayStrip
                strip={row.strip}
                label={fill(own.strip, { answered: count(row.strip, 'ac'), silent: count(row.strip, 's') })}
              />
              <span>
                {fill(own.quietTold, {
                  before: format.percentTight(row.before),
                  since: format.percentTight(row.since),
                  day: format.dayShort(row.changedOn),
                  sure: format.percentTight(row.probability),
                })}
              </span>
            </Row>
          ))}
        </ul>
      </details>
      <details className={styles.box}>
        <summary>
          {own.thanks} ({data.occasions.length})
        </summary>
        {data.occasions.length === 0 ? <p>{own.thanksNone}</p> : null}
        <ul data-testid="thanks">
          {data.occasions.slice(0, 40).map((row) => (
            <Row key={`${row.gaugeId} ${row.key}`} row={row} onGo={onGo} acts={acts(row)}>
              <span>
                {own.kinds[row.kind]} · {format.dayShort(row.day)}
              </span>
            </Row>
          ))}
        </ul>
      </details>
      {data.answered.length === 0 ? null : (
        <details className={styles.box}>
          <summary>{own.answered}</summary>
          <ul>
            {data.answered.map(({ id, name, code, key, how }) => (
              <li key={id} className={styles.row}>
                <span>
                  {name} ({code}) · {key} · {own.how[how]}
                </span>
                <Button look="quiet" onClick={() => answer.mutate({ undo: id })}>
                  {own.undo}
                </Button>
              </li>
            ))}
          </ul>
        </details>
      )}
      <NetworkLetterForm lastDay={data.day} />
    </div>
  )
}

function Row({
  row,
  acts,
  onGo,
  children,
}: {
  row: QuietRow | OccasionRow
  acts: ReactNode
  onGo: (code: string) => void
  children: ReactNode
}) {
  return (
    <li className={styles.row}>
      <div className={styles.who}>
        <button type="button" className={styles.name} onClick={() => onGo(row.code)}>
          {row.name} <code>{row.code}</code>
        </button>
        {children}
      </div>
      <p className={styles.text}>{row.text}</p>
      {acts}
    </li>
  )
}

type ActsProps = {
  text: string
  onAnswer: (how: 'sent' | 'not now') => void
  /** Null where the desk knows no person to write to. */
  onWrite: (() => void) | null
}

function Acts({ text, onAnswer, onWrite }: ActsProps) {
  const { words, language } = useWords()
  const own = holdingWords[language]
  const [isCopied, setCopied] = useState(false)
  return (
    <div className={styles.acts}>
      {onWrite === null ? null : <Button onClick={onWrite}>{words.people.write}</Button>}
      <Button onClick={() => void navigator.clipboard.writeText(text).then(() => setCopied(true))}>
        {isCopied ? own.copied : own.copy}
      </Button>
      <Button onClick={() => onAnswer('sent')}>{own.sent}</Button>
      <Button look="quiet" onClick={() => onAnswer('not now')}>
        {own.notNow}
      </Button>
    </div>
  )
}

function NetworkLetterForm({ lastDay }: { lastDay: string }) {
  const { language } = useWords()
  const own = holdingWords[language]
  const [period, setPeriod] = useState(monthBefore(lastDay))
  const [words, setWords] = useState('')
  const [names, setNames] = useState(false)
  return (
    <details className={styles.box}>
      <summary>{own.letter}</summary>
      <div className={styles.form}>
        <label>
          {own.month}
          <input
            value={period}
            pattern="\d{4}(-(0[1-9]|1[0-2]))?"
            maxLength={7}
            onChange={(event) => setPeriod(event.target.value)}
          />
        </label>
        <label>
          {own.words}
          <textarea rows={3} maxLength={2000} value={words} onChange={(event) => setWords(event.target.value)} />
        </label>
        <label className={styles.check}>
          <input type="checkbox" checked={names} onChange={(event) => setNames(event.target.checked)} />
          {own.names}
        </label>
        <a href={networkLetterUrl(period, words, names)} target="_blank" rel="noreferrer">
          {own.openLetter}
        </a>
      </div>
    </details>
  )
}

/** The last month that is over. */
export function monthBefore(day: string): string {
  if (day === '') return ''
  const [year, month] = day.split('-').map(Number)
  return month === 1 ? `${year! - 1}-12` : `${year}-${String(month! - 1).padStart(2, '0')}`
}

function count(strip: string, letters: string): number {
  return [...strip].filter((state) => letters.includes(state)).length
}
