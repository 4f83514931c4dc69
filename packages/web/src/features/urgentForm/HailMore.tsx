import { groundCovers, stoneShapes } from '@gaugewright/contract'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import type { MoreProps } from './moreDraft.ts'
import { OneOf, YesNo } from './Options.tsx'
import { StoneField } from './StoneField.tsx'
import { mayMeasure, type SeenOf, stonesOutOfOrder } from './urgentDraft.ts'

/** Stones in more detail. By hand they are measured only when it is over and safe. */
export function HailMore({ seen, onSeen, isHalfHour, onHalfHour }: MoreProps<SeenOf<'hail'>>) {
  const { words } = useFormInUse()
  const isMeasuringOffered = mayMeasure(seen.isGoingOn, isHalfHour === true)
  const shared = { isMeasuringOffered }
  return (
    <>
      {seen.isGoingOn === true ? <p className={styles.note}>{words.stayInside}</p> : null}
      {seen.isGoingOn === false ? (
        <YesNo label={words.thunderTitle} value={isHalfHour} onChange={onHalfHour} words={words} />
      ) : null}
      {seen.isGoingOn === false && isHalfHour !== null ? (
        <p className={styles.note}>{isHalfHour ? words.measureNow : words.thunderWait}</p>
      ) : null}
      <StoneField
        label={words.largest}
        stone={seen.largest}
        mayBeEmpty={false}
        onChange={(stone) => stone !== null && onSeen({ ...seen, largest: stone })}
        {...shared}
      />
      {(['typical', 'smallest'] as const).map((which) => (
        <StoneField
          key={which}
          label={words[which]}
          stone={seen[which] ?? null}
          mayBeEmpty
          onChange={(stone) => onSeen({ ...seen, [which]: stone })}
          {...shared}
        />
      ))}
      {stonesOutOfOrder(seen).map((which) => (
        <p key={which} className={styles.trouble} role="alert">
          {words.outOfOrder[which]}
        </p>
      ))}
      <OneOf
        label={words.shape}
        value={seen.shape ?? null}
        options={stoneShapes.map((shape) => ({ value: shape, label: words.shapes[shape] }))}
        onChange={(shape) => onSeen({ ...seen, shape })}
      />
      <OneOf
        label={words.cover}
        value={seen.groundCover ?? null}
        options={groundCovers.map((cover) => ({ value: cover, label: words.covers[cover] }))}
        onChange={(groundCover) => onSeen({ ...seen, groundCover })}
      />
    </>
  )
}
