/** One offer: who, where, what comes next by one key, the steps with undo, contacts and letters. */
import { type Candidate, type OfferState, offerStates } from '@gaugewright/contract'
import { type ReactNode, useState } from 'react'
import { Link } from 'wouter'
import { forgetCandidate, moveOffer, undoOffer } from '../../api/people.ts'
import { problemFrom } from '../../api/problemError.ts'
import { useSingleKeys } from '../../hooks/useSingleKeys.ts'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { ContactLog } from './ContactLog.tsx'
import { GiveGaugeDialog } from './GiveGaugeDialog.tsx'
import { LetterDialog } from './LetterDialog.tsx'
import { OfferDialog } from './OfferDialog.tsx'
import { Age } from './OfferRows.tsx'
import styles from './PeoplePage.module.css'
import { Reach } from './Reach.tsx'
import { usePersonAct } from './usePerson.ts'

type Open = 'letter' | 'gauge' | 'close' | 'forget' | 'change' | null

export function CandidatePanel({ candidate, more }: { candidate: Candidate; more?: ReactNode }) {
  const { words, format } = useWords()
  const own = words.people
  const { id, offer, state, next, events, gauge } = candidate
  const about = `candidate ${id}`
  const [open, setOpen] = useState<Open>(null)
  const [why, setWhy] = useState('')
  const move = usePersonAct(moveOffer, about)
  const undo = usePersonAct(undoOffer, about)
  const forget = usePersonAct(forgetCandidate)
  const error = move.error ?? undo.error ?? forget.error
  const isBusy = move.isPending || undo.isPending
  const go = (to: OfferState) => move.mutate({ candidateId: id, state: to, why: '' })
  const takeNext = () => {
    if (isBusy || next === null) return
    if (next === 'gauge in hand' && gauge === null) setOpen('gauge')
    else go(next)
  }
  const last = events.filter(({ isTakenBack }) => !isTakenBack).at(-1)
  useSingleKeys({
    n: takeNext,
    w: () => setOpen('letter'),
    u: () => last && !isBusy && undo.mutate({ candidateId: id, eventId: last.id }),
  })
  const before =
    offerStates[
      Math.max(
        0,
        offerStates.indexOf(
          events.filter((one) => !one.isTakenBack && one.state !== 'closed').at(-1)?.state ?? 'offered',
        ),
      )
    ]!
  return (
    <div className={styles.person} data-testid="candidate" data-state={state}>
      <Link href="/people" className={styles.back ?? ''}>
        ← {own.back}
      </Link>
      <header>
        <h2>{offer.name}</h2>
        <p>
          <strong>{own.state[state]}</strong> <Age candidate={candidate} />
        </p>
        <p className={styles.soft}>
          {own.cameBy[candidate.door]}, {format.instant(candidate.offeredAtUtc)}
          {offer.mail === null
            ? ''
            : ` · ${candidate.addressConfirmedAtUtc === null ? own.unconfirmed : own.confirmed}`}
        </p>
      </header>
      <div className={styles.acts}>
        {next === null ? null : (
          <Button look="primary" hint="n" onClick={takeNext} disabled={isBusy}>
            {own.step[next] ?? own.state[next]}
          </Button>
        )}
        <Button hint="w" onClick={() => setOpen('letter')}>
          {own.write}
        </Button>
        {last === undefined ? null : (
          <Button hint="u" onClick={() => undo.mutate({ candidateId: id, eventId: last.id })} disabled={isBusy}>
            {own.undo}: {own.state[last.state]}
          </Button>
        )}
        <Button look="quiet" onClick={() => setOpen('change')}>
          {own.change}
        </Button>
        {state === 'closed' ? (
          <Button onClick={() => go(before)}>{own.reopen}</Button>
        ) : (
          <Button look="quiet" onClick={() => setOpen('close')}>
            {own.close}
          </Button>
        )}
        <Button look="quiet" onClick={() => setOpen('forget')}>
          {own.forget}
        </Button>
      </div>
      {error ? (
        <Notice
          problem={problemFrom(error)}
          onDismiss={() => {
            for (const one of [move, undo, forget]) one.reset()
          }}
        />
      ) : null}
      <Reach mail={offer.mail} phone={offer.phone} />
      <dl className={styles.facts}>
        <dt>{own.place}</dt>
        <dd>
          {offer.place}
          {offer.latDeg === null || offer.lonDeg === null
            ? ''
            : ` (${format.number(offer.latDeg, 4)}, ${format.number(offer.lonDeg, 4)})`}
        </dd>
        <dt>{own.yard}</dt>
        <dd>
          {own.yards[offer.yard]}
          {offer.yardWords === '' ? '' : `: ${offer.yardWords}`}
        </dd>
        <dt>{own.hoursWords}</dt>
        <dd>
          {offer.readingTime ?? own.anyHour}
          {offer.hours === '' ? '' : `; ${offer.hours}`}
        </dd>
        <dt>{own.language}</dt>
        <dd>{words.languageNames[offer.language]}</dd>
        {gauge === null ? null : (
          <>
            <dt>{own.gauge}</dt>
            <dd>
              <Link href={`/gauges/${gauge.code}`}>
                {gauge.name} ({gauge.code})
              </Link>
            </dd>
          </>
        )}
      </dl>
      <p>
        <Link href={gauge === null ? `/people/offers/${id}/site` : `/gauges/${gauge.code}/site`}>{own.site}</Link>
      </p>
      <ContactLog about={about} />
      <section aria-label={own.steps}>
        <h3>{own.steps}</h3>
        <ol className={styles.steps}>
          {events.map((event) => (
            <li key={event.id} data-taken-back={event.isTakenBack}>
              <span>
                {own.state[event.state]}
                {event.why === '' ? '' : ` (${event.why})`} · {format.instant(event.atUtc)}
                {event.by === '' ? '' : ` · ${event.by}`}
                {event.isTakenBack ? ` · ${own.takenBack}` : ''}
              </span>
              <Button
                look="quiet"
                onClick={() => undo.mutate({ candidateId: id, eventId: event.id })}
                disabled={isBusy}
              >
                {event.isTakenBack ? own.redo : own.undo}
              </Button>
            </li>
          ))}
        </ol>
      </section>
      {more}
      {open === 'letter' ? <LetterDialog about={about} step={letterFor(state)} onClose={() => setOpen(null)} /> : null}
      {open === 'gauge' ? <GiveGaugeDialog candidate={candidate} onClose={() => setOpen(null)} /> : null}
      {open === 'change' ? (
        <OfferDialog candidate={candidate} onClose={() => setOpen(null)} onDone={() => setOpen(null)} />
      ) : null}
      {open === 'close' ? (
        <Dialog title={own.close} closeLabel={words.close} onClose={() => setOpen(null)}>
          <form
            className={styles.form}
            onSubmit={(event) => {
              event.preventDefault()
              move.mutate({ candidateId: id, state: 'closed', why }, { onSuccess: () => setOpen(null) })
            }}
          >
            <label>
              {own.why}
              <textarea
                value={why}
                maxLength={500}
                required
                rows={2}
                onChange={(event) => setWhy(event.target.value)}
              />
            </label>
            {move.error ? <Notice problem={problemFrom(move.error)} /> : null}
            <Button type="submit" look="primary">
              {own.close}
            </Button>
          </form>
        </Dialog>
      ) : null}
      {open === 'forget' ? (
        <Dialog title={own.forget} closeLabel={words.close} onClose={() => setOpen(null)}>
          <p>{fill(own.forgetSure, { name: offer.name })}</p>
          <div className={styles.acts}>
            <Button onClick={() => setOpen(null)}>{own.keep}</Button>
            <Button look="primary" onClick={() => forget.mutate(id, { onSuccess: () => setOpen(null) })}>
              {own.forgetYes}
            </Button>
          </div>
        </Dialog>
      ) : null}
    </div>
  )
}

function letterFor(state: OfferState) {
  const fits = {
    offered: 'questions',
    answered: 'site agreed',
    'site agreed': 'gauge sent',
    'gauge in hand': 'drills',
    trained: 'first reading',
    reading: 'thanks',
    closed: 'thanks',
  } as const
  return fits[state]
}
