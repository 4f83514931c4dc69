import type { Candidate } from '@gaugewright/contract'
import { type FormEvent, useState } from 'react'
import { giveGauge } from '../../api/people.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { Dialog } from '../../ui/Dialog.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './PeoplePage.module.css'
import { usePersonAct } from './usePerson.ts'

/** A new gauge, or one that nobody reads, for a candidate. */
export function GiveGaugeDialog({ candidate, onClose }: { candidate: Candidate; onClose: () => void }) {
  const { words } = useWords()
  const own = words.people
  const { id, offer } = candidate
  const give = usePersonAct(giveGauge, `candidate ${id}`)
  const [way, setWay] = useState<'new' | 'there'>('new')
  const [code, setCode] = useState('')
  const [name, setName] = useState(offer.place)
  const [lat, setLat] = useState(offer.latDeg === null ? '' : String(offer.latDeg))
  const [lon, setLon] = useState(offer.lonDeg === null ? '' : String(offer.lonDeg))
  const [elevation, setElevation] = useState('')
  const number = (text: string) => Number(text.trim().replace(',', '.'))
  const submit = (event: FormEvent) => {
    event.preventDefault()
    const gauge =
      way === 'there'
        ? { code }
        : {
            name,
            latDeg: number(lat),
            lonDeg: number(lon),
            elevationM: elevation.trim() === '' ? null : number(elevation),
          }
    give.mutate({ candidateId: id, gauge }, { onSuccess: onClose })
  }
  const field = (label: string, value: string, set: (text: string) => void, required = true) => (
    <label>
      {label}
      <input
        inputMode="decimal"
        value={value}
        required={required}
        pattern="-?[0-9]+([.,][0-9]+)?"
        onChange={(event) => set(event.target.value)}
      />
    </label>
  )
  return (
    <Dialog title={fill(own.giveTitle, { name: offer.name })} closeLabel={words.close} onClose={onClose}>
      <form className={styles.form} onSubmit={submit}>
        <Choice
          label={own.gauge}
          value={way}
          options={[
            { value: 'new', label: own.giveNew },
            { value: 'there', label: own.giveThere },
          ]}
          onChange={setWay}
        />
        {way === 'there' ? (
          <label>
            {own.giveCode}
            <input
              value={code}
              required
              maxLength={100}
              autoCapitalize="characters"
              onChange={(event) => setCode(event.target.value)}
            />
          </label>
        ) : (
          <>
            <label>
              {own.giveName}
              <input value={name} required maxLength={120} onChange={(event) => setName(event.target.value)} />
            </label>
            {field(own.lat, lat, setLat)}
            {field(own.lon, lon, setLon)}
            {field(own.elevation, elevation, setElevation, false)}
          </>
        )}
        {give.error ? <Notice problem={problemFrom(give.error)} /> : null}
        <Button type="submit" look="primary" disabled={give.isPending}>
          {own.give}
        </Button>
      </form>
    </Dialog>
  )
}
