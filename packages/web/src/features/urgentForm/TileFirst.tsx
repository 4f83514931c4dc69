import { damages, floodedThings } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import type { Seen } from './urgentDraft.ts'

/** Flooding and wind: the second touch says where the water is, or what the wind has done. */
export function TileFirst({ kind, onSeen }: { kind: 'flooding' | 'wind'; onSeen: (seen: Seen) => void }) {
  const { words, form } = useFormInUse()
  const tiles: { name: string; seen: Seen }[] =
    kind === 'flooding'
      ? floodedThings.map((thing) => ({ name: words.things[thing], seen: { kind, things: [thing] } }))
      : damages.map((damage) => ({ name: words.damages[damage], seen: { kind, damage: [damage] } }))
  return (
    <>
      <p className={styles.hint}>{kind === 'flooding' ? words.floodingHint : words.windHint}</p>
      {kind === 'wind' ? (
        <p className={styles.hint}>{fill(words.hurt, { number: form.emergencyNumber ?? words.hurtNumber })}</p>
      ) : null}
      <ul className={styles.tiles}>
        {tiles.map(({ name, seen }) => (
          <li key={name}>
            <button type="button" className={styles.tile} onClick={() => onSeen(seen)}>
              <strong>{name}</strong>
            </button>
          </li>
        ))}
      </ul>
    </>
  )
}
