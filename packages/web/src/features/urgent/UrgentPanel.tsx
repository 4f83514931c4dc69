import type { UrgentItem, WireStorm } from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import type { ReactNode } from 'react'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { KindMark } from './KindMark.tsx'
import { UrgentHistory } from './UrgentHistory.tsx'
import styles from './UrgentPanel.module.css'
import { factsOf } from './urgentFacts.ts'
import { placeText, stretchText, whatText } from './urgentView.ts'
import type { UrgentDesk } from './useUrgent.ts'

type Props = { item: UrgentItem; storm: WireStorm | null; desk: UrgentDesk }

/** One report in full, with what can be done about it. */
export function UrgentPanel({ item, storm, desk }: Props) {
  const own = useWords()
  const { words } = own
  const { report, severity, state } = item
  return (
    <article className={styles.panel} data-testid="urgent-panel" data-report={report.id} data-state={state}>
      <header className={styles.head}>
        <KindMark kind={report.seen.kind} level={severity.level} />
        <div>
          <h2>{whatText(report.seen, own)}</h2>
          <p className={styles.soft}>{placeText(item, own)}</p>
          <p className={styles.tags}>
            <strong data-level={severity.level}>{words.urgent.levels[severity.level]}</strong>
            <span>{words.urgent.states[state]}</span>
          </p>
        </div>
      </header>
      <div className={styles.acts}>
        <Button
          look={state === 'new' ? 'primary' : 'plain'}
          hint="s"
          aria-keyshortcuts="s"
          disabled={state !== 'new' || desk.isActing}
          onClick={desk.markSeen}
        >
          {words.urgent.markSeen}
        </Button>
        <Button
          look={state === 'seen' ? 'primary' : 'plain'}
          hint="p"
          aria-keyshortcuts="p"
          disabled={desk.isActing}
          onClick={() => desk.open('pass on')}
        >
          {words.urgent.passOn}
        </Button>
        <Button
          hint="c"
          aria-keyshortcuts="c"
          disabled={state === 'closed' || desk.isActing}
          onClick={() => desk.open('close')}
        >
          {words.urgent.closeReport}
        </Button>
        <Button
          look="quiet"
          hint="u"
          aria-keyshortcuts="u"
          disabled={desk.undoable === null || desk.isActing}
          onClick={() => desk.undo(desk.undoable)}
        >
          {words.urgent.takeBack}
        </Button>
      </div>
      <dl className={styles.facts}>
        {factsOf(item, storm, own).map(({ name, value }) => (
          <Fact key={name} name={name}>
            {value}
          </Fact>
        ))}
        <Fact name={words.urgent.times}>
          <ul className={styles.times} data-testid="urgent-times">
            <li>
              {words.urgent.timeToDesk}: <b>{stretchText(item.secondsToDesk, own)}</b>
            </li>
            <li>
              {words.urgent.timeToSeen}: <b>{stretchText(item.secondsToSeen, own)}</b>
            </li>
            <li>
              {words.urgent.timeToPassedOn}: <b>{stretchText(item.secondsToPassedOn, own)}</b>
            </li>
          </ul>
        </Fact>
      </dl>
      {report.photoIds.length > 0 ? (
        <section aria-label={words.urgent.photos} className={styles.photos}>
          {report.photoIds.map((sha256, index) => (
            <a key={sha256} href={routes.photo.path.replace(':sha256', sha256)} target="_blank" rel="noreferrer">
              <img
                src={routes.photo.path.replace(':sha256', sha256)}
                alt={fill(words.urgent.photo, { number: index + 1, count: report.photoIds.length })}
                loading="lazy"
              />
            </a>
          ))}
        </section>
      ) : null}
      <UrgentHistory item={item} onUndo={desk.undo} isActing={desk.isActing} />
    </article>
  )
}

function Fact({ name, children }: { name: string; children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  )
}
