import type { MyGauges } from '@gaugewright/contract'
import type { Language, Unit } from '@gaugewright/science'
import { useCallback, useEffect, useState } from 'react'
import { askMyGauges } from '../../api/my/myQueries.ts'
import { keptGaugeCodes } from '../../api/my/phoneStore.ts'
import { problemFrom } from '../../api/problemError.ts'
import { MyPage } from '../../features/my/MyPage.tsx'
import { SignInCard } from '../../features/my/SignInCard.tsx'
import { sayProblem } from '../../features/my/sayProblem.ts'
import { useMyGauge } from '../../features/my/useMyGauge.ts'
import { useReports } from '../../features/my/useReports.ts'
import { useStored } from '../../hooks/useStored.ts'
import { myWordsOf } from '../../words/myWords.ts'
import styles from './MyApp.module.css'
import { ThemeChoice } from './ThemeChoice.tsx'

/** The observer's page: which gauge (the address says so, or there is only one), which language, which unit. */
export function MyApp() {
  const [chosenLanguage, setLanguage] = useStored('gaugewright.my.language', '')
  const [chosenUnit, setUnit] = useStored('gaugewright.my.unit', '')
  const [code, setCode] = useState(() => new URLSearchParams(location.search).get('gauge'))
  const [gauges, setGauges] = useState<MyGauges['gauges'] | null>(null)
  const [isUnknown, setUnknown] = useState(false)
  const [renewed, setRenewed] = useState(0)
  const onPhone = useMyGauge(code)
  const { refresh } = onPhone
  const onReceived = useCallback(() => {
    refresh()
    setRenewed((count) => count + 1)
  }, [refresh])
  const reports = useReports(onReceived)
  const { gauge, problem } = onPhone
  const language: Language =
    languageOf(chosenLanguage) ?? languageOf(navigator.language) ?? gauge?.network.language ?? 'en'
  const unit: Unit = chosenUnit === 'in' || chosenUnit === 'mm' ? chosenUnit : (gauge?.network.unit ?? 'in')
  const words = myWordsOf[language]
  useEffect(() => {
    document.documentElement.lang = language
    document.title = gauge === null ? words.title : `${words.title} · ${gauge.gauge.name}`
  }, [language, words, gauge])
  useEffect(() => {
    if (code !== null) return
    const find = async () => {
      const asked = await askMyGauges().catch((error: unknown) => {
        setUnknown(problemFrom(error).code === 'SIGN_IN_NEEDED')
        return null
      })
      if (asked !== null) setUnknown(false)
      const codes = asked?.gauges.map((one) => one.code) ?? (await keptGaugeCodes().catch(() => []))
      setGauges(asked?.gauges ?? codes.map((one) => ({ code: one, name: one })))
      if (codes.length === 1) setCode(codes[0] ?? null)
    }
    void find()
    // Signed in by now, in another page of this browser.
    const onSight = () => {
      if (document.visibilityState === 'visible') void find()
    }
    document.addEventListener('visibilitychange', onSight)
    return () => document.removeEventListener('visibilitychange', onSight)
  }, [code])

  if (gauge !== null) {
    return (
      <MyPage
        gauge={gauge}
        onPhone={onPhone}
        reports={reports}
        renewed={renewed}
        unit={unit}
        language={language}
        words={words}
        theme={<ThemeChoice words={words} />}
        onUnit={setUnit}
        onLanguage={setLanguage}
      />
    )
  }
  const mustSignIn = isUnknown || problem?.code === 'SIGN_IN_NEEDED'
  return (
    <main className={styles.page}>
      <h1>{words.title}</h1>
      {mustSignIn ? <SignInCard words={words} /> : null}
      {problem !== null && !mustSignIn ? (
        <p role="alert">
          {problem.code === 'DESK_UNREACHABLE' ? words.stale : sayProblem(problem, words)} <code>{problem.code}</code>
        </p>
      ) : null}
      {code !== null && problem === null ? <p role="status">{words.loading}</p> : null}
      {code === null && gauges !== null && gauges.length === 0 && !mustSignIn ? <p>{words.noGauge}</p> : null}
      {code === null && gauges !== null && gauges.length > 1 ? (
        <>
          <h2>{words.chooseGauge}</h2>
          {gauges.map((one) => (
            <button key={one.code} type="button" className={styles.gauge} onClick={() => setCode(one.code)}>
              {one.name} <code>{one.code}</code>
            </button>
          ))}
        </>
      ) : null}
    </main>
  )
}

function languageOf(text: string): Language | null {
  const start = text.slice(0, 2).toLowerCase()
  return start === 'en' || start === 'es' ? start : null
}
