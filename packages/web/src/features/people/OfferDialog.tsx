import { type Candidate, type Offer, yardKinds } from '@gaugewright/contract'
import { type FormEvent, useState } from 'react'
import { addOffer, changeOffer } from '../../api/people.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './PeoplePage.module.css'
import { usePersonAct } from './usePerson.ts'

type Props = { candidate?: Candidate; onClose: () => void; onDone: (id: string) => void }

/** An offer by hand: a new one that came by telephone, or one to be put right. */
export function OfferDialog({ candidate, onClose, onDone }: Props) {
  const { words, language } = useWords()
  const own = words.people
  const [offer, setOffer] = useState<Offer>(
    candidate?.offer ?? {
      name: '',
      mail: null,
      phone: null,
      language,
      place: '',
      latDeg: null,
      lonDeg: null,
      yard: 'other',
      yardWords: '',
      readingTime: null,
      hours: '',
    },
  )
  const add = usePersonAct(addOffer)
  const change = usePersonAct(changeOffer)
  const error = add.error ?? change.error
  const submit = (event: FormEvent) => {
    event.preventDefault()
    if (candidate === undefined) add.mutate(offer, { onSuccess: ({ id }) => onDone(id) })
    else change.mutate({ candidateId: candidate.id, offer }, { onSuccess: ({ id }) => onDone(id) })
  }
  const text = (key: 'name' | 'place' | 'yardWords' | 'hours', label: string, isNeeded = false) => (
    <label>
      {label}
      <input
        value={offer[key]}
        required={isNeeded}
        maxLength={key === 'yardWords' ? 1000 : 300}
        onChange={(event) => setOffer({ ...offer, [key]: event.target.value })}
      />
    </label>
  )
  const maybe = (key: 'mail' | 'phone' | 'readingTime', label: string, type: string) => (
    <label>
      {label}
      <input
        type={type}
        value={offer[key] ?? ''}
        onChange={(event) =>
          setOffer({ ...offer, [key]: event.target.value.trim() === '' ? null : event.target.value })
        }
      />
    </label>
  )
  return (
    <Dialog title={candidate === undefined ? own.addOffer : own.change} closeLabel={words.close} onClose={onClose}>
      <form className={styles.form} onSubmit={submit}>
        {text('name', own.name, true)}
        {maybe('mail', own.mail, 'email')}
        {maybe('phone', own.phone, 'tel')}
        {text('place', own.place, true)}
        <label>
          {own.yard}
          <select
            value={offer.yard}
            onChange={(event) => setOffer({ ...offer, yard: event.target.value as Offer['yard'] })}
          >
            {yardKinds.map((kind) => (
              <option key={kind} value={kind}>
                {own.yards[kind]}
              </option>
            ))}
          </select>
        </label>
        {text('yardWords', own.yard)}
        {maybe('readingTime', own.readingTime, 'time')}
        {text('hours', own.hoursWords)}
        <label>
          {own.language}
          <select
            value={offer.language}
            onChange={(event) => setOffer({ ...offer, language: event.target.value as 'en' | 'es' })}
          >
            <option value="en">{words.languageNames.en}</option>
            <option value="es">{words.languageNames.es}</option>
          </select>
        </label>
        {error ? <Notice problem={problemFrom(error)} /> : null}
        <div className={styles.acts}>
          <Button type="submit" look="primary" disabled={add.isPending || change.isPending}>
            {own.save}
          </Button>
          <Button onClick={onClose}>{own.cancel}</Button>
        </div>
      </form>
    </Dialog>
  )
}
