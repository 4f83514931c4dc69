import { type Offer, yardKinds } from '@gaugewright/contract'
import { Choice } from '../../ui/Choice.tsx'
import type { OfferWords } from '../../words/offerWords.ts'
import styles from './Offer.module.css'

type Props = { offer: Offer; onChange: (offer: Offer) => void; words: OfferWords; missing: readonly string[] }

/** What a person says about themself and their yard. */
export function OfferFields({ offer, onChange, words, missing }: Props) {
  const text = (key: 'name' | 'place', label: string) => (
    <label className={styles.field}>
      {label}
      <input
        value={offer[key]}
        maxLength={key === 'name' ? 120 : 300}
        autoComplete={key === 'name' ? 'name' : 'street-address'}
        aria-invalid={missing.includes(key)}
        onChange={(event) => onChange({ ...offer, [key]: event.target.value })}
      />
    </label>
  )
  const maybe = (key: 'mail' | 'phone' | 'readingTime', label: string, type: string, autoComplete: string) => (
    <label className={styles.field}>
      {label}
      <input
        type={type}
        value={offer[key] ?? ''}
        autoComplete={autoComplete}
        aria-invalid={missing.includes(key)}
        onChange={(event) => onChange({ ...offer, [key]: event.target.value === '' ? null : event.target.value })}
      />
    </label>
  )
  return (
    <>
      {text('name', words.name)}
      <div className={styles.pair}>
        {maybe('mail', words.mail, 'email', 'email')}
        {maybe('phone', words.phone, 'tel', 'tel')}
      </div>
      <p className={styles.soft}>{words.reachHint}</p>
      {text('place', words.place)}
      <Choice
        label={words.yard}
        value={offer.yard}
        options={yardKinds.map((value) => ({ value, label: words.yards[value] }))}
        onChange={(yard) => onChange({ ...offer, yard })}
      />
      <label className={styles.field}>
        {words.yardWords}
        <textarea
          rows={2}
          maxLength={1000}
          value={offer.yardWords}
          onChange={(event) => onChange({ ...offer, yardWords: event.target.value })}
        />
      </label>
      {maybe('readingTime', words.readingTime, 'time', 'off')}
      <label className={styles.field}>
        {words.hours}
        <input
          value={offer.hours}
          maxLength={500}
          onChange={(event) => onChange({ ...offer, hours: event.target.value })}
        />
      </label>
    </>
  )
}

/** What cannot be missing, by the names of the fields. */
export function missingIn(offer: Offer): string[] {
  const missing: string[] = []
  if (offer.name.trim() === '') missing.push('name')
  if ((offer.mail ?? '').trim() === '' && (offer.phone ?? '').trim() === '') missing.push('mail')
  if (offer.mail !== null && offer.mail.trim() !== '' && !/^\S+@\S+\.\S+$/.test(offer.mail.trim())) missing.push('mail')
  if (offer.place.trim() === '') missing.push('place')
  return [...new Set(missing)]
}
