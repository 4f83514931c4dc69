import type { DayEvidence, Problem, WhatIf } from '@gaugewright/contract'
import { Choice } from '../../ui/Choice.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { WhatIfFindings } from './WhatIfFindings.tsx'
import { WhatIfMap } from './WhatIfMap.tsx'
import styles from './WhatIfPanel.module.css'
import { actsFor, type WhatIfAct } from './whatIfAsk.ts'

type Props = {
  evidence: DayEvidence
  act: WhatIfAct | null
  onAct: (act: WhatIfAct) => void
  whatIf: WhatIf | null
  problem: Problem | null
  /** What is shown is still that of another act. */
  isWaiting: boolean
  isShown: boolean
  onShow: (shown: boolean) => void
  onHover: (gaugeId: string | null) => void
  onChoose: (gaugeId: string) => void
}

/** What a decision would do: to the map, the county means, what is found of other readings, and the docket. */
export function WhatIfPanel(props: Props) {
  const { evidence, act, whatIf } = props
  const { words, format } = useWords()
  const { proposal } = evidence
  const amend = proposal
    ? fill(words.actAmendTo, {
        amount: format.overDays(proposal.amountUm, proposal.isTrace, proposal.firstDay, proposal.lastDay),
      })
    : words.actAmend
  const labels: Record<WhatIfAct, string> = {
    stands: words.actStands,
    amended: amend,
    'set aside': words.actSetAside,
  }
  return (
    <div className={styles.panel} data-testid="what-if" data-act={act} aria-busy={props.isWaiting}>
      {act === null ? null : (
        <Choice
          label={words.whatIf.act}
          labelHidden
          value={act}
          options={actsFor(evidence).map((value) => ({ value, label: labels[value] }))}
          onChange={props.onAct}
        />
      )}
      {whatIf ? (
        <div className={styles.told}>
          <WhatIfMap whatIf={whatIf} isShown={props.isShown} onShow={props.onShow} />
          <WhatIfFindings whatIf={whatIf} onHover={props.onHover} onChoose={props.onChoose} />
        </div>
      ) : props.problem ? (
        <Notice problem={props.problem} />
      ) : (
        <p className={styles.note}>{words.loading}</p>
      )}
    </div>
  )
}
