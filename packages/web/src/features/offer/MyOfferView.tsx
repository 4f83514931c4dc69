/** A person's own offer, by the link in their mail: where it stands, their words, and the way to take it back. */
import type { MyOffer, Offer } from '@gaugewright/contract'
import { type FormEvent, type ReactNode, useState } from 'react'
import { changeMyOffer, withdrawMyOffer } from '../../api/offer.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { fill } from '../../words/fill.ts'
import { offerWords } from '../../words/offerWords.ts'
import styles from './Offer.module.css'
import { missingIn, OfferFields } from './OfferFields.tsx'

type Props = {
  mine: MyOffer
  secret: string
  language: 'en' | 'es'
  onMine: (mine: MyOffer) => void
  onGone: () => void
  yard: ReactNode
  drills: ReactNode
}

export function MyOfferView({ mine, secret, language, onMine, onGone, yard, drills }: Props) {
  const words = offerWords[language]
  const own = words.mine
  const [offer, setOffer] = useState<Offer>(mine.offer)
  const [isAsking, setIsAsking] = useState(false)
  const [said, setSaid] = useState('')
  const missing = missingIn(offer)
  const act = async <T,>(work: () => Promise<T>, done: (value: T) => void) => {
    try {
      done(await work())
    } catch (error) {
      const { seen, advice } = problemFrom(error)
      setSaid(`${words.problem}: ${seen}. ${advice}`)
    }
  }
  const save = (event: FormEvent) => {
    event.preventDefault()
    if (missing.length > 0) return
    void act(
      () => changeMyOffer({ secret, offer }),
      (next) => {
        onMine(next)
        setSaid(own.saved)
      },
    )
  }
  const holdsGauge = ['gauge in hand', 'trained', 'reading'].includes(mine.state)
  return (
    <div className={styles.form}>
      <p className={styles.stateNow} role="status">
        {own.states[mine.state]} {holdsGauge ? <a href="/my/">{own.toMyGauge}</a> : null}
      </p>
      <details>
        <summary>{own.change}</summary>
        <form className={styles.form} onSubmit={save} noValidate>
          <OfferFields offer={offer} onChange={setOffer} words={words} missing={missing} />
          <Button type="submit" look="primary" disabled={missing.length > 0}>
            {own.save}
          </Button>
        </form>
      </details>
      <p role="status">{said}</p>
      <section aria-label={own.yard}>
        <h2>{own.yard}</h2>
        <p className={styles.soft}>{own.yardIntro}</p>
        {mine.photoCount === 0 ? null : <p role="status">{fill(own.photosSent, { count: String(mine.photoCount) })}</p>}
        {yard}
      </section>
      <details>
        <summary>{own.drills}</summary>
        {drills}
      </details>
      <Button look="quiet" onClick={() => setIsAsking(true)}>
        {own.withdraw}
      </Button>
      {isAsking ? (
        <Dialog title={own.withdraw} closeLabel={own.keep} onClose={() => setIsAsking(false)}>
          <p>{own.withdrawSure}</p>
          <div className={styles.acts}>
            <Button onClick={() => setIsAsking(false)}>{own.keep}</Button>
            <Button
              look="primary"
              onClick={() => {
                setIsAsking(false)
                void act(() => withdrawMyOffer(secret), onGone)
              }}
            >
              {own.withdrawYes}
            </Button>
          </div>
        </Dialog>
      ) : null}
    </div>
  )
}
