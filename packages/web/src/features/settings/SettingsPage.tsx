import type { ReactNode } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Notice } from '../../ui/Notice.tsx'
import { ScreenHeader } from '../../ui/ScreenHeader.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import { AccessSection } from './AccessSection.tsx'
import { DrillsSection } from './DrillsSection.tsx'
import { Guarded } from './Guarded.tsx'
import { KeysSection } from './KeysSection.tsx'
import { LettersSection } from './LettersSection.tsx'
import { OfferPageSection } from './OfferPageSection.tsx'
import { OutgoingSection } from './OutgoingSection.tsx'
import { PeopleFilesSection } from './PeopleFilesSection.tsx'
import { RuleSection } from './RuleSection.tsx'
import styles from './SettingsPage.module.css'
import { UrgentSection } from './UrgentSection.tsx'
import { useRule } from './useRule.ts'

/** Settings: what holds for the whole network. A section for each thing that can be set; none takes the others down. */
export function SettingsPage({ tools }: { tools: ReactNode }) {
  const { words } = useWords()
  const desk = useRule()
  const rule = desk.rule.data ? (
    <RuleSection desk={desk} rule={desk.rule.data} />
  ) : desk.rule.error ? (
    <Notice problem={problemFrom(desk.rule.error)} onRetry={() => void desk.rule.refetch()} />
  ) : (
    <p role="status">{words.loading}</p>
  )
  return (
    <div className={styles.page}>
      <ScreenHeader networkName={desk.rule.data?.network.name ?? ''} tools={tools}>
        <h1 className="sr-only">{words.screens.settings}</h1>
      </ScreenHeader>
      <main className={styles.main}>
        <Guarded>{rule}</Guarded>
        <Guarded>
          <UrgentSection />
        </Guarded>
        <Guarded>
          <OfferPageSection />
        </Guarded>
        <Guarded>
          <LettersSection network={desk.rule.data?.network.name ?? ''} />
        </Guarded>
        <Guarded>
          <DrillsSection />
        </Guarded>
        <Guarded>
          <OutgoingSection />
        </Guarded>
        <Guarded>
          <AccessSection />
        </Guarded>
        <Guarded>
          <PeopleFilesSection />
        </Guarded>
        <Guarded>
          <KeysSection />
        </Guarded>
      </main>
    </div>
  )
}
