import { lazy, Suspense, useEffect, useState } from 'react'
import { askUrgentForm } from '../../api/urgentForm/urgentFormQuery.ts'
import { isFormHash } from '../../features/urgentForm/formView.ts'
import { useStored } from '../../hooks/useStored.ts'
import { urgentLinkWords } from '../../words/urgentLinkWords.ts'
import { MyApp } from './MyApp.tsx'
import styles from './UrgentLink.module.css'

/** Loaded when it is wanted; the worker has it on the phone by then. */
const UrgentFormPage = lazy(async () => {
  const { UrgentFormPage: page } = await import('../../features/urgentForm/UrgentFormPage.tsx')
  return { default: page }
})

const MySite = lazy(async () => ({ default: (await import('./MySite.tsx')).MySite }))
const MyDrills = lazy(async () => ({ default: (await import('./MyDrills.tsx')).MyDrills }))

/** The observer's page; behind `#drills` the drills, behind `#site` the own site, behind `#urgent` what cannot wait. */
export function ObserverApp() {
  const [isUrgent, setUrgent] = useState(() => isFormHash(location.hash))
  const [hash, setHash] = useState(() => location.hash)
  const [chosenUnit] = useStored('gaugewright.my.unit', '')
  const [chosenLanguage] = useStored('gaugewright.my.language', '')
  const gauge = new URLSearchParams(location.search).get('gauge') ?? ''
  const words = (chosenLanguage || navigator.language).startsWith('es') ? urgentLinkWords.es : urgentLinkWords.en
  useEffect(() => {
    const follow = () => {
      setUrgent(isFormHash(location.hash))
      setHash(location.hash)
    }
    addEventListener('hashchange', follow)
    addEventListener('popstate', follow)
    return () => {
      removeEventListener('hashchange', follow)
      removeEventListener('popstate', follow)
    }
  }, [])
  // The form must be ready on the day without a signal.
  useEffect(() => {
    askUrgentForm(gauge).catch(() => undefined)
  }, [gauge])
  if (isUrgent) {
    return (
      <Suspense fallback={<p role="status">{words.loading}</p>}>
        <UrgentFormPage gauge={gauge} homeHref="#" />
      </Suspense>
    )
  }
  if (hash === '#drills' || hash === '#site') {
    const language = (chosenLanguage || navigator.language).startsWith('es') ? 'es' : 'en'
    const unit = chosenUnit === 'mm' ? 'mm' : 'in'
    return (
      <Suspense fallback={<p role="status">{words.loading}</p>}>
        {hash === '#site' ? (
          <MySite gauge={gauge} homeHref="#" language={language} unit={unit} />
        ) : (
          <MyDrills language={language} unit={unit} />
        )}
      </Suspense>
    )
  }
  return (
    <>
      <div className={styles.page}>
        <a className={styles.link} href="#urgent">
          <strong>{words.label}</strong>
          <span>{words.what}</span>
        </a>
      </div>
      <MyApp />
    </>
  )
}
