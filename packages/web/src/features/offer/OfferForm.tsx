/** The public page: the network's own words, a short form, and a word of thanks. What is typed survives a reload. */
import type { Offer, OfferPage } from '@gaugewright/contract'
import { type FormEvent, useEffect, useRef, useState } from 'react'
import { askOfferPage, sendOffer } from '../../api/offer.ts'
import { type ProblemError, problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { type OfferWords, offerWords } from '../../words/offerWords.ts'
import styles from './Offer.module.css'
import { missingIn, OfferFields } from './OfferFields.tsx'
import { PlaceMap } from './PlaceMap.tsx'
import { solvePuzzle } from './solvePuzzle.ts'

type Props = { page: OfferPage; language: 'en' | 'es' }

const DRAFT_KEY = 'gaugewright.offer'
type Draft = { id: string; offer: Offer }

export function OfferForm({ page, language }: Props) {
  const words = offerWords[language]
  const [draft, setDraft] = useState<Draft>(() => keptDraft(language))
  const [state, setState] = useState<'typing' | 'sending' | 'sent'>('typing')
  const [missing, setMissing] = useState<string[]>([])
  const [problem, setProblem] = useState<{ seen: string; advice: string } | null>(null)
  const [hereFailed, setHereFailed] = useState(false)
  const ticket = useRef({ ticket: page.ticket, nonce: solvePuzzle(page.ticket) })
  const decoy = useRef<HTMLInputElement>(null)
  const { offer } = draft
  const change = (next: Offer) => setDraft({ ...draft, offer: next })
  useEffect(() => {
    try {
      if (state === 'sent') localStorage.removeItem(DRAFT_KEY)
      else localStorage.setItem(DRAFT_KEY, JSON.stringify(draft))
    } catch {
      // A closed store: the form stays in the page.
    }
  }, [draft, state])
  const submit = async (event: FormEvent) => {
    event.preventDefault()
    const lacks = missingIn(offer)
    setMissing(lacks)
    setProblem(null)
    if (lacks.length > 0) return
    setState('sending')
    try {
      await send(draft, language, ticket.current, decoy.current?.value ?? '')
      setState('sent')
    } catch (error) {
      const said = problemFrom(error as ProblemError)
      if (said.code === 'OFFER_TICKET') {
        // A page left open for too long gets a new ticket, and the person presses once more.
        const fresh = await askOfferPage().catch(() => null)
        if (fresh !== null) ticket.current = { ticket: fresh.ticket, nonce: solvePuzzle(fresh.ticket) }
      }
      setProblem(said)
      setState('typing')
    }
  }
  if (state === 'sent') {
    return (
      <div role="status" className={styles.sent}>
        <h2>{words.sent}</h2>
        <p>{words.sentMore}</p>
      </div>
    )
  }
  const place = offer.latDeg === null || offer.lonDeg === null ? null : { latDeg: offer.latDeg, lonDeg: offer.lonDeg }
  return (
    <form className={styles.form} onSubmit={(event) => void submit(event)} noValidate>
      <OfferFields offer={offer} onChange={change} words={words} missing={missing} />
      <fieldset className={styles.where}>
        <legend>{words.map}</legend>
        <p className={styles.soft}>{words.mapHint}</p>
        {page.bounds === null ? null : (
          <PlaceMap
            page={page}
            place={place}
            words={words}
            onPlace={(at) => change({ ...offer, latDeg: at?.latDeg ?? null, lonDeg: at?.lonDeg ?? null })}
          />
        )}
        <Button
          onClick={() =>
            navigator.geolocation.getCurrentPosition(
              ({ coords }) =>
                change({
                  ...offer,
                  latDeg: Math.round(coords.latitude * 1e4) / 1e4,
                  lonDeg: Math.round(coords.longitude * 1e4) / 1e4,
                }),
              () => setHereFailed(true),
            )
          }
        >
          {words.here}
        </Button>
        {hereFailed ? <p role="alert">{words.hereFailed}</p> : null}
      </fieldset>
      {/* Not for people: whoever fills it in is a program. */}
      <div className={styles.decoy} aria-hidden="true">
        <label>
          Website
          <input ref={decoy} name="website" tabIndex={-1} autoComplete="off" defaultValue="" />
        </label>
      </div>
      <p className={styles.soft}>
        {fill(words.privacy, {
          months: page.keepMonths === 1 ? '1' : `${page.keepMonths} ${language === 'es' ? 'meses' : 'months'}`,
        })}
      </p>
      <p className={styles.soft}>{words.kept}</p>
      {missing.length > 0 ? (
        <p role="alert" className={styles.bad}>
          {fill(words.missing, {
            fields: missing.map((key) => words[key as keyof Pick<OfferWords, 'name' | 'mail' | 'place'>]).join(', '),
          })}
        </p>
      ) : null}
      {problem === null ? null : (
        <div role="alert" className={styles.bad}>
          <p>
            {words.problem}: {problem.seen}
          </p>
          <p>{problem.advice}</p>
        </div>
      )}
      <Button type="submit" look="primary" disabled={state === 'sending'}>
        {words.send}
      </Button>
      <p role="status" className={styles.soft}>
        {state === 'sending' ? words.working : ''}
      </p>
    </form>
  )
}

async function send(
  { id, offer }: Draft,
  language: 'en' | 'es',
  { ticket, nonce }: { ticket: OfferPage['ticket']; nonce: Promise<string> },
  website: string,
): Promise<void> {
  const trimmed = (text: string | null) => (text === null || text.trim() === '' ? null : text.trim())
  await sendOffer({
    id,
    offer: { ...offer, language, mail: trimmed(offer.mail), phone: trimmed(offer.phone) },
    ticket: ticket.ticket,
    nonce: await nonce,
    website,
  })
}

function keptDraft(language: 'en' | 'es'): Draft {
  const fresh: Draft = {
    id: crypto.randomUUID?.() ?? uuid(),
    offer: {
      name: '',
      mail: null,
      phone: null,
      language,
      place: '',
      latDeg: null,
      lonDeg: null,
      yard: 'some trees',
      yardWords: '',
      readingTime: '07:00',
      hours: '',
    },
  }
  try {
    const kept = JSON.parse(localStorage.getItem(DRAFT_KEY) ?? 'null') as Draft | null
    return kept !== null && typeof kept.id === 'string' && typeof kept.offer?.name === 'string'
      ? { id: kept.id, offer: { ...fresh.offer, ...kept.offer } }
      : fresh
  } catch {
    return fresh
  }
}

/** On plain http browsers have no randomUUID. */
function uuid(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  bytes[6] = (bytes[6]! & 0x0f) | 0x40
  bytes[8] = (bytes[8]! & 0x3f) | 0x80
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`
}
