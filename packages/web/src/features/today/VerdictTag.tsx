import type { WireDecision } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './VerdictTag.module.css'

const signs = { stands: '✓', amended: '✎', asked: '?', 'set aside': '∅' } as const

/** A decision in one word, with a sign of its own beside the colour. */
export function VerdictTag({ decision }: { decision: WireDecision }) {
  const { words, format } = useWords()
  const text = decision.amended
    ? fill(words.verdictTo, { amount: format.amount(decision.amended.amountUm, decision.amended.isTrace) })
    : words.verdicts[decision.verdict]
  return (
    <span className={styles.tag} data-verdict={decision.verdict}>
      <span aria-hidden="true">{signs[decision.verdict]}</span> {text}
    </span>
  )
}
