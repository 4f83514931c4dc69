import type { UrgentForm } from '@gaugewright/contract'
import { useEffect, useMemo } from 'react'
import { useStored } from '../../hooks/useStored.ts'
import { type UrgentFormWords, urgentFormWordsEn, urgentFormWordsEs } from '../../words/urgentFormWords.ts'
import { FirstStep } from './FirstStep.tsx'
import { FormProvider, useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import { KindButtons } from './KindButtons.tsx'
import { MoreForm } from './MoreForm.tsx'
import { ReportCard } from './ReportCard.tsx'
import { reportsOnPhone } from './reportsOnPhone.ts'
import { SafetyPanel } from './SafetyPanel.tsx'
import { StepHeading } from './StepHeading.tsx'
import { useFormView } from './useFormView.ts'
import { useUrgentForm } from './useUrgentForm.ts'
import { useUrgentSending } from './useUrgentSending.ts'
import type { Language } from './writeNumber.ts'

const wordsOf: Record<Language, UrgentFormWords> = { en: urgentFormWordsEn, es: urgentFormWordsEs }

interface Props {
  /** Code of the gauge as the page was opened with; empty for the asker's own. */
  gauge: string
  /** Where "My gauge" is. */
  homeHref: string
}

/** The observer's form for urgent reports: safety, two touches, and more afterwards. Works without a signal. */
export function UrgentFormPage({ gauge, homeHref }: Props) {
  const { form, problem } = useUrgentForm(gauge)
  const [chosen, setLanguage] = useStored('gaugewright.my.language', '')
  const language = readLanguage(chosen) ?? readLanguage(navigator.language) ?? form?.network.language ?? 'en'
  const words = wordsOf[language]
  useEffect(() => {
    document.documentElement.lang = language
    document.title = words.title
  }, [language, words])
  const inUse = useMemo(
    () => ({ words, language, form: form ?? unknownForm, unit: (form ?? unknownForm).network.unit }),
    [words, language, form],
  )
  const other = language === 'en' ? 'es' : 'en'
  return (
    <FormProvider value={inUse}>
      <main className={styles.page}>
        <header className={styles.top}>
          <h1>{words.title}</h1>
          <a className={styles.button} href={homeHref}>
            {words.toGauge}
          </a>
          <button type="button" className={styles.button} lang={other} onClick={() => setLanguage(other)}>
            {words.languageNames[other]}
          </button>
        </header>
        {form === null ? (
          <>
            <SafetyPanel />
            <p className={styles.note} role="status">
              {problem === null
                ? words.loading
                : problem.code === 'GAUGE_NOT_YOURS'
                  ? words.formUnknown
                  : words.formMissing}
            </p>
          </>
        ) : (
          <Steps />
        )}
      </main>
    </FormProvider>
  )
}

function Steps() {
  const { words } = useFormInUse()
  const [view, go] = useFormView()
  const sending = useUrgentSending()
  const reports = useMemo(() => reportsOnPhone(sending.kept ?? []), [sending.kept])
  const report = view.at === 'report' ? reports.find(({ reportId }) => reportId === view.reportId) : undefined
  const back = (
    <button type="button" className={styles.button} onClick={() => go({ at: 'start' })}>
      ← {view.at === 'report' ? words.newReport : words.back}
    </button>
  )
  const broken = sending.isBroken ? (
    <p className={styles.trouble} role="alert">
      {words.keepFailed}
    </p>
  ) : null

  if (view.at === 'first') {
    return (
      <>
        {back}
        {broken}
        <FirstStep
          key={view.kind}
          kind={view.kind}
          sending={sending}
          onFiled={(reportId) => go({ at: 'report', reportId }, { replace: true })}
        />
      </>
    )
  }
  if (report !== undefined) {
    return (
      <>
        {back}
        <StepHeading>{words.stateTitle}</StepHeading>
        <ReportCard report={report} sending={sending} />
        {broken}
        <MoreForm key={report.reportId} report={report} sending={sending} />
      </>
    )
  }
  return (
    <>
      <SafetyPanel />
      {broken}
      <h2 className={styles.heading}>{words.kindTitle}</h2>
      <KindButtons onKind={(kind) => go({ at: 'first', kind })} />
      {reports.length > 0 ? (
        <>
          <h2 className={styles.heading}>{words.reportsTitle}</h2>
          <ul className={styles.list}>
            {reports.map((one) => (
              <li key={one.reportId}>
                <ReportCard
                  report={one}
                  sending={sending}
                  onMore={() => go({ at: 'report', reportId: one.reportId })}
                />
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </>
  )
}

/** While nothing is known yet, safety advice alone is shown. */
const unknownForm: UrgentForm = {
  network: { id: '', name: '', unit: 'mm', timeZone: 'UTC', language: 'en' },
  emergencyNumber: null,
  gauge: null,
  observerName: null,
}

function readLanguage(text: string): Language | null {
  const start = text.slice(0, 2).toLowerCase()
  return start === 'en' || start === 'es' ? start : null
}
