import type { MyGauge, MyReading } from '@gaugewright/contract'
import type { Language, Unit } from '@gaugewright/science'
import { type ReactNode, useMemo, useState } from 'react'
import type { KeptReport } from '../../api/my/phoneStore.ts'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import { AwayTab } from './AwayTab.tsx'
import type { Known } from './entryDays.ts'
import styles from './MyPage.module.css'
import { OptionsTab } from './OptionsTab.tsx'
import { RecordTab } from './RecordTab.tsx'
import { ReportForm } from './ReportForm.tsx'
import { ReportsList } from './ReportsList.tsx'
import { SignInCard } from './SignInCard.tsx'
import { sayProblem } from './sayProblem.ts'
import type { GaugeOnPhone } from './useMyGauge.ts'
import type { Reports } from './useReports.ts'

type Tab = keyof MyWords['tabs']
const tabs: readonly Tab[] = ['report', 'record', 'away', 'options']

type Props = {
  gauge: MyGauge
  onPhone: GaugeOnPhone
  reports: Reports
  renewed: number
  unit: Unit
  language: Language
  words: MyWords
  theme: ReactNode
  onUnit: (unit: Unit) => void
  onLanguage: (language: Language) => void
}

export function MyPage({ gauge, onPhone, reports, renewed, unit, language, words, theme, onUnit, onLanguage }: Props) {
  const [tab, setTab] = useState<Tab>('report')
  const [correcting, setCorrecting] = useState<MyReading | null>(null)
  const own = reports.reports.filter((report) => report.gauge === gauge.gauge.code)
  const known = useMemo(() => knownOf(gauge, own), [gauge, own])
  const { problem } = onPhone
  const mustSignIn = problem?.code === 'SIGN_IN_NEEDED' || reports.outcome === 'sign in'
  // Below the morning's report: it can wait, the report cannot.
  const wantsSurvey = ['asked', 'due', 'overdue'].includes(gauge.siteDue)
  const waiting = own.filter(({ state }) => state === 'waiting').length
  return (
    <div className={styles.page}>
      <header className={styles.header}>
        <div>
          <h1>{gauge.gauge.name}</h1>
          <p className={styles.note}>
            {gauge.network.name} · <code>{gauge.gauge.code}</code>
            {gauge.gauge.observerName ? ` · ${fill(words.greeting, { name: gauge.gauge.observerName })}` : ''}
          </p>
        </div>
      </header>
      <nav className={styles.tabs} aria-label={words.tabsLabel}>
        {tabs.map((one) => (
          <button
            key={one}
            type="button"
            aria-current={tab === one ? 'page' : undefined}
            onClick={() => {
              setTab(one)
              setCorrecting(null)
            }}
          >
            {words.tabs[one]}
          </button>
        ))}
      </nav>
      <main className={styles.main}>
        {onPhone.isStale && problem?.code === 'DESK_UNREACHABLE' ? (
          <p className={styles.hint} role="status" data-testid="offline">
            {words.stale}
          </p>
        ) : null}
        {problem?.code === 'GAUGE_NOT_YOURS' ? (
          <p className={styles.hint} role="alert">
            {sayProblem(problem, words)} <code>{problem.code}</code>
          </p>
        ) : null}
        {mustSignIn ? <SignInCard words={words} /> : null}
        {tab === 'report' ? (
          <>
            <ReportForm
              gauge={gauge}
              known={known}
              unit={unit}
              language={language}
              words={words}
              correcting={correcting}
              onSend={(readings) => reports.add(gauge.gauge.code, readings)}
              onStop={() => setCorrecting(null)}
            />
            <ReportsList
              reports={own}
              language={language}
              words={words}
              onDrop={(seq) => void reports.drop(seq)}
              onAgain={(report) => void reports.again(report)}
              onTry={reports.send}
            />
            {wantsSurvey ? (
              <p className={styles.hint}>
                <a href="#site">{words.siteAsked}</a>
              </p>
            ) : null}
          </>
        ) : null}
        {tab === 'record' ? (
          <RecordTab
            gauge={gauge}
            unit={unit}
            language={language}
            words={words}
            renewed={renewed}
            onCorrect={(reading) => {
              setCorrecting(reading)
              setTab('report')
            }}
          />
        ) : null}
        {tab === 'away' ? (
          <AwayTab gauge={gauge} language={language} words={words} onChanged={onPhone.refresh} />
        ) : null}
        {tab === 'options' ? (
          <OptionsTab
            unit={unit}
            language={language}
            words={words}
            waiting={waiting}
            theme={theme}
            onUnit={onUnit}
            onLanguage={onLanguage}
          />
        ) : null}
      </main>
    </div>
  )
}

/** What the days hold: readings that the desk has, and those that wait here. */
function knownOf(gauge: MyGauge, reports: readonly KeptReport[]): Known[] {
  const waiting = reports.filter(({ state }) => state !== 'refused').flatMap(({ readings }) => readings)
  return [...gauge.readings, ...waiting].map(({ firstDay, lastDay, text }) => ({ firstDay, lastDay, text }))
}
