import type { Site } from '@gaugewright/contract'
import { lengthUnitOf } from '@gaugewright/drawings'
import { isDrawn } from '@gaugewright/science'
import { useEffect, useState } from 'react'
import { askMyGauges } from '../../api/my/myQueries.ts'
import { photosToSend } from '../../api/photos/surveyPhotos.ts'
import { problemFrom } from '../../api/problemError.ts'
import { askSite, reportUrl, saveSurvey } from '../../api/sites.ts'
import { sayProblem } from '../../features/my/sayProblem.ts'
import { SitePage } from '../../features/siting/SitePage.tsx'
import { Button } from '../../ui/Button.tsx'
import { myWordsOf } from '../../words/myWords.ts'
import { sitingWords } from '../../words/sitingWords.ts'
import styles from './MySite.module.css'

type Props = { gauge: string; homeHref: string; language: 'en' | 'es'; unit: 'in' | 'mm' }

/** The place of one's own gauge, drawn or photographed anew by whoever reads it. */
export function MySite({ gauge, homeHref, language, unit }: Props) {
  const [about, setAbout] = useState(gauge === '' ? null : `gauge ${gauge}`)
  const [site, setSite] = useState<Site | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const words = myWordsOf[language]
  const siting = sitingWords[language]
  const tell = (error: unknown) => {
    const found = problemFrom(error)
    setProblem(found.code === 'DESK_UNREACHABLE' ? words.away.needsSignal : sayProblem(found, words))
  }
  const load = () => {
    setProblem(null)
    const asked =
      about === null
        ? askMyGauges().then(({ gauges: [own] }) => {
            if (own === undefined) setProblem(words.noGauge)
            else setAbout(`gauge ${own.code}`)
          })
        : askSite(about).then(setSite)
    asked.catch(tell)
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked when the gauge is known, and on pressing again
  useEffect(load, [about])
  useEffect(() => {
    document.documentElement.lang = language
    document.title = words.options.site
  }, [language, words])
  const latest = site?.surveys.find(({ isTakenBack, plan }) => !isTakenBack && isDrawn(plan))
  return (
    <main className={styles.main}>
      <h1 className="sr-only">{words.options.site}</h1>
      <a href={homeHref}>← {siting.back}</a>
      {problem === null ? null : (
        <div role="alert">
          <p>{problem}</p>
          {site === null ? <Button onClick={load}>{words.retry}</Button> : null}
        </div>
      )}
      {site === null || about === null ? (
        problem === null ? (
          <p role="status">{words.loading}</p>
        ) : null
      ) : (
        <>
          {siting.history.due[site.due] ? <p role="status">▲ {siting.history.due[site.due]}</p> : null}
          <SitePage
            name={site.name}
            language={language}
            unit={lengthUnitOf(unit)}
            siteKey={`my ${about}`}
            saved={latest?.plan ?? null}
            today={site.today}
            onSave={async ({ surveyedOn, note, plan, photos }) => {
              setProblem(null)
              try {
                const sent = await photosToSend(photos)
                setSite(await saveSurvey({ about, id: crypto.randomUUID(), surveyedOn, note, plan, photos: sent }))
                return true
              } catch (error) {
                tell(error)
                return false
              }
            }}
            history={() =>
              latest === undefined ? null : (
                <p>
                  <a href={reportUrl(about)} target="_blank" rel="noreferrer">
                    {siting.history.report}
                  </a>
                </p>
              )
            }
          />
        </>
      )}
    </main>
  )
}
