import type { UrgentItem } from '@gaugewright/contract'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './UrgentPanel.module.css'

type Props = { item: UrgentItem; onUndo: (eventId: string) => void; isActing: boolean }
type Done = { eventId: string; atUtc: string; text: string; isUndoable: boolean }

/** Who looked, where it went, why it was closed, oldest first; what has not gone out can be taken back here. */
export function UrgentHistory({ item, onUndo, isActing }: Props) {
  const { words, format } = useWords()
  const say = words.urgent
  const byOf = (by: string) => (by === 'rule' ? say.theRule : by)
  const done: Done[] = [
    ...item.seenBy.map(({ eventId, by, atUtc }) => ({
      eventId,
      atUtc,
      text: fill(say.didSee, { by: byOf(by), time: format.instant(atUtc) }),
      isUndoable: true,
    })),
    ...item.passedOn.map(({ eventId, by, atUtc, form, way, to }) => ({
      eventId,
      atUtc,
      text: fill(way === 'copied' ? say.didPassOn.copied : say.didPassOn.other, {
        by: byOf(by),
        form: say.forms[form],
        to: to ?? '',
        time: format.instant(atUtc),
      }),
      isUndoable: way === 'copied',
    })),
  ]
  if (item.closed !== null) {
    const { eventId, by, atUtc, why } = item.closed
    done.push({
      eventId,
      atUtc,
      text: fill(say.didClose, { by: byOf(by), why, time: format.instant(atUtc) }),
      isUndoable: true,
    })
  }
  if (done.length === 0) return null
  done.sort((one, other) => (one.atUtc < other.atUtc ? -1 : 1))
  return (
    <section className={styles.history}>
      <h3>{say.history}</h3>
      <ol>
        {done.map(({ eventId, text, isUndoable }) => (
          <li key={eventId}>
            <span>{text}</span>
            {isUndoable ? (
              <Button
                look="quiet"
                disabled={isActing}
                onClick={() => onUndo(eventId)}
                aria-label={`${say.takeBack}: ${text}`}
              >
                {say.takeBack}
              </Button>
            ) : null}
          </li>
        ))}
      </ol>
    </section>
  )
}
