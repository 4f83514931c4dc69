import { useId, useState } from 'react'
import { fill } from '../../words/fill.ts'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import { OneOf } from './Options.tsx'
import type { SenderState } from './useSender.ts'
import { writeNumber } from './writeNumber.ts'

/** Where it was, and who says so. Shows next to nothing where the gauge and its observer are known. */
export function WhereFields({ state }: { state: SenderState }) {
  const { words, form } = useFormInUse()
  const id = useId()
  return (
    <>
      {form.gauge === null ? null : (
        <OneOf
          label={words.where}
          value={state.isElsewhere ? 'place' : 'gauge'}
          options={[
            { value: 'gauge', label: fill(words.whereGauge, { gauge: form.gauge.name }) },
            { value: 'place', label: words.wherePlace },
          ]}
          onChange={(where) => state.setElsewhere(where === 'place')}
        />
      )}
      {state.isElsewhere ? <PlaceFields state={state} /> : null}
      {form.observerName === null ? (
        <div className={styles.field}>
          <label className={styles.label} htmlFor={id}>
            {words.name}
          </label>
          <input
            id={id}
            autoComplete="name"
            maxLength={200}
            value={state.name}
            onChange={(event) => state.setName(event.target.value)}
          />
        </div>
      ) : null}
    </>
  )
}

function PlaceFields({ state }: { state: SenderState }) {
  const { words, language } = useFormInUse()
  const [asked, setAsked] = useState<'no' | 'asking' | 'failed' | 'found'>('no')
  const [typed, setTyped] = useState({ lat: '', lon: '' })
  const ids = { name: useId(), lat: useId(), lon: useId() }
  const { place, setPlace } = state
  const ask = () => {
    setAsked('asking')
    if (!('geolocation' in navigator)) return setAsked('failed')
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => {
        setAsked('found')
        setPlace({ ...place, latDeg: coords.latitude, lonDeg: coords.longitude })
      },
      () => setAsked('failed'),
      { enableHighAccuracy: true, timeout: 15_000, maximumAge: 60_000 },
    )
  }
  const type = (change: Partial<typeof typed>) => {
    const next = { ...typed, ...change }
    setTyped(next)
    setPlace({ ...place, latDeg: degrees(next.lat), lonDeg: degrees(next.lon) })
  }
  const found = (deg: number | null) => (deg === null ? '–' : writeNumber(deg, 4, language))
  return (
    <div>
      <h3 className={styles.heading}>{words.placeTitle}</h3>
      <button type="button" className={styles.button} onClick={ask} disabled={asked === 'asking'}>
        {asked === 'asking' ? words.placeAsking : words.placeHere}
      </button>
      <p className={asked === 'failed' ? styles.trouble : styles.hint} aria-live="polite">
        {asked === 'failed' ? words.placeFailed : null}
        {asked === 'found' ? fill(words.placeFound, { lat: found(place.latDeg), lon: found(place.lonDeg) }) : null}
      </p>
      {asked === 'failed' || asked === 'no' ? (
        <div className={styles.pair}>
          {(['lat', 'lon'] as const).map((which) => (
            <div key={which} className={styles.field}>
              <label className={styles.label} htmlFor={ids[which]}>
                {which === 'lat' ? words.placeLat : words.placeLon}
              </label>
              <input
                id={ids[which]}
                inputMode="text"
                autoComplete="off"
                value={typed[which]}
                onChange={(event) => type({ [which]: event.target.value })}
              />
            </div>
          ))}
        </div>
      ) : null}
      <div className={styles.field}>
        <label className={styles.label} htmlFor={ids.name}>
          {words.placeName}
        </label>
        <input
          id={ids.name}
          maxLength={200}
          value={place.name}
          onChange={(event) => setPlace({ ...place, name: event.target.value })}
        />
      </div>
    </div>
  )
}

/** Decimal degrees with either mark; null for anything else. */
function degrees(text: string): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-')
  return /^-?\d{1,3}(\.\d+)?$/.test(plain) ? Number(plain) : null
}
