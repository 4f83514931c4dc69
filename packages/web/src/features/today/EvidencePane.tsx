import type { DayReview } from '@gaugewright/contract'
import { problemFrom } from '../../api/problemError.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { DecisionBar } from './DecisionBar.tsx'
import { EvidencePanel } from './EvidencePanel.tsx'
import styles from './TodayPage.module.css'
import type { Morning } from './useMorning.ts'

/** The evidence of the chosen reading, and the acts that decide it always in reach below. */
export function EvidencePane({ review, morning }: { review: DayReview; morning: Morning }) {
  const { words } = useWords()
  const { shown, chosen, evidence, acts } = morning
  return (
    <section className={styles.evidence} aria-labelledby="evidence-heading">
      <h2 id="evidence-heading" className="sr-only">
        {words.evidence}
      </h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <section className={styles.scroll} tabIndex={0} aria-label={chosen?.row?.name ?? words.evidenceNone}>
        <EvidencePanel
          review={review}
          chosen={chosen}
          evidence={evidence}
          evidenceProblem={morning.evidenceError ? problemFrom(morning.evidenceError) : null}
          whatIf={{
            act: morning.act,
            onAct: morning.weigh,
            whatIf: morning.whatIf,
            problem: morning.whatIfError ? problemFrom(morning.whatIfError) : null,
            isWaiting: morning.isWhatIfWaiting,
            isShown: morning.measure === 'change',
            onShow: morning.showWhatIf,
          }}
          onTakeBack={morning.takeBack}
          onHover={shown.setHovered}
          onChoose={(gaugeId) => morning.choose(gaugeId)}
        />
      </section>
      {morning.readingId === null ? null : (
        <DecisionBar
          proposal={evidence?.proposal ?? null}
          suggested={evidence?.canTell ? evidence.suggested : null}
          reason={shown.reason}
          onReason={shown.setReason}
          reasonRef={shown.reasonRef}
          canUndo={morning.canUndo}
          onStands={acts.stands}
          onAmend={acts.amend}
          onAsk={acts.ask}
          onSetAside={acts.setAside}
          onUndo={acts.undo}
        />
      )}
    </section>
  )
}
