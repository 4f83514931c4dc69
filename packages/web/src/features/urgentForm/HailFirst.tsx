import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import { sizeOptions, writeStone } from './hailSizes.ts'
import { type Seen, stoneByObject } from './urgentDraft.ts'

/** The second of two touches: the size by an object, judged from inside. */
export function HailFirst({ onSeen }: { onSeen: (seen: Seen) => void }) {
  const { words, unit, language } = useFormInUse()
  return (
    <>
      <p className={styles.hint}>{words.hailHint}</p>
      <ul className={styles.tiles}>
        {sizeOptions.map(({ object, diameterMm }) => {
          const size = writeStone(diameterMm, unit, language)
          return (
            <li key={object}>
              <button
                type="button"
                className={styles.tile}
                onClick={() => onSeen({ kind: 'hail', largest: stoneByObject(object) })}
              >
                <StoneShape diameterMm={diameterMm} />
                <strong>{words.objects[object]}</strong>
                <small>{size}</small>
              </button>
            </li>
          )
        })}
      </ul>
    </>
  )
}

/** Stones against each other; not to the scale of the screen. */
function StoneShape({ diameterMm }: { diameterMm: number }) {
  const largestMm = sizeOptions.at(-1)!.diameterMm
  // The areas of the smallest would vanish: their shares grow by the square root.
  const radius = 27 * Math.sqrt(diameterMm / largestMm)
  return (
    <span className={styles.stone}>
      <svg width="56" height="56" viewBox="0 0 56 56" aria-hidden="true" focusable="false">
        <circle cx="28" cy="28" r={radius} />
      </svg>
    </span>
  )
}
