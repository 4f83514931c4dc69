import type { DayEvidence, SuggestedAct } from '@gaugewright/contract'
import { type Ref, useId } from 'react'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './DecisionBar.module.css'

type Props = {
  proposal: DayEvidence['proposal']
  /** The act that is offered first: its button stands out. */
  suggested: SuggestedAct | null
  reason: string
  onReason: (reason: string) => void
  reasonRef: Ref<HTMLInputElement>
  canUndo: boolean
  onStands: () => void
  onAmend: () => void
  onAsk: () => void
  onSetAside: () => void
  onUndo: () => void
}

export function DecisionBar(props: Props) {
  const { words, format } = useWords()
  const hints = useId()
  const { proposal, suggested } = props
  const look = (act: SuggestedAct) => (act === suggested ? 'primary' : 'plain')
  const amend =
    proposal && suggested === 'amend'
      ? fill(words.actAmendTo, {
          amount: format.overDays(proposal.amountUm, proposal.isTrace, proposal.firstDay, proposal.lastDay),
        })
      : words.actAmend
  return (
    <section className={styles.bar} aria-label={words.decideLabel}>
      <div className={styles.acts}>
        <Button look={look('stands')} hint="S" aria-keyshortcuts="s" onClick={props.onStands}>
          {words.actStands}
        </Button>
        <Button look={look('amend')} hint="A" aria-keyshortcuts="a" onClick={props.onAmend}>
          {amend}
        </Button>
        <Button look={look('ask')} hint="Q" aria-keyshortcuts="q" onClick={props.onAsk}>
          {words.actAsk}
        </Button>
        <Button hint="X" aria-keyshortcuts="x" onClick={props.onSetAside}>
          {words.actSetAside}
        </Button>
      </div>
      <div className={styles.second}>
        <input
          ref={props.reasonRef}
          className={styles.reason}
          type="text"
          maxLength={2000}
          list={hints}
          placeholder={words.reason}
          aria-label={words.reason}
          aria-keyshortcuts="r"
          value={props.reason}
          onChange={(event) => props.onReason(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter' || event.key === 'Escape') event.currentTarget.blur()
          }}
        />
        <Button look="quiet" hint="U" aria-keyshortcuts="u" disabled={!props.canUndo} onClick={props.onUndo}>
          {words.actUndo}
        </Button>
      </div>
      <datalist id={hints}>
        {words.reasonHints.map((hint) => (
          <option key={hint} value={hint} />
        ))}
      </datalist>
    </section>
  )
}
