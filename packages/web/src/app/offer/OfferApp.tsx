import type { MyOffer, OfferPage } from '@gaugewright/contract'
import { lengthUnitOf } from '@gaugewright/drawings'
import { lazy, Suspense, useEffect, useState } from 'react'
import { saveMySitting } from '../../api/drills.ts'
import { askMyOffer, askOfferPage, saveMyYard } from '../../api/offer.ts'
import { photosToSend } from '../../api/photos/surveyPhotos.ts'
import { problemFrom } from '../../api/problemError.ts'
import { MyOfferView } from '../../features/offer/MyOfferView.tsx'
import { OfferForm } from '../../features/offer/OfferForm.tsx'
import { useStored } from '../../hooks/useStored.ts'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { offerWords } from '../../words/offerWords.ts'
import styles from './OfferApp.module.css'

/** Only who draws a yard loads what draws it. */
const DrillPage = lazy(async () => ({ default: (await import('../../features/drills/DrillPage.tsx')).DrillPage }))
const SitePage = lazy(async () => ({ default: (await import('../../features/siting/SitePage.tsx')).SitePage }))

/** The public page, or, with the secret of a mail behind the number sign, the page of an own offer. */
export function OfferApp() {
  const [chosen, setLanguage] = useStored('gaugewright.offer.language', '')
  const [page, setPage] = useState<OfferPage | null>(null)
  const [mine, setMine] = useState<MyOffer | 'invalid' | 'gone' | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const [secret] = useState(() => /#mine=([\w-]+)/.exec(location.hash)?.[1] ?? null)
  const language: 'en' | 'es' =
    chosen === 'en' || chosen === 'es' ? chosen : (languageOf(navigator.language) ?? page?.language ?? 'en')
  const words = offerWords[language]
  const load = () => {
    setProblem(null)
    const asked = secret === null ? askOfferPage().then(setPage) : askMyOffer(secret).then(setMine)
    asked.catch((error: unknown) => {
      const { code, seen, advice } = problemFrom(error)
      if (code === 'OFFER_LINK_NOT_VALID') setMine('invalid')
      else setProblem(`${seen}. ${advice}`)
    })
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked once, when the page opens
  useEffect(load, [])
  const network = page?.network ?? (mine !== null && typeof mine === 'object' ? mine.network : '')
  const title = fill(secret === null ? words.title : words.mine.title, { network })
  useEffect(() => {
    document.documentElement.lang = language
    document.title = title
  }, [language, title])
  return (
    <main className={styles.main} data-wide={secret !== null}>
      <header className={styles.head}>
        <img src="/mark.svg" alt="" width="34" height="34" />
        <h1>{title}</h1>
        <Button
          look="quiet"
          lang={language === 'en' ? 'es' : 'en'}
          onClick={() => setLanguage(language === 'en' ? 'es' : 'en')}
        >
          {words.otherLanguage}
        </Button>
      </header>
      {problem !== null ? (
        <div role="alert">
          <p>
            {words.problem}: {problem}
          </p>
          <Button onClick={load}>{words.retry}</Button>
        </div>
      ) : null}
      {secret === null ? (
        page === null ? (
          problem === null ? (
            <p role="status">{words.loading}</p>
          ) : null
        ) : page.isOpen ? (
          <>
            <div className={styles.words}>
              {(page.words[language] || page.words[page.language]).split(/\n\s*\n/).map((paragraph) => (
                <p key={paragraph}>{paragraph}</p>
              ))}
            </div>
            <OfferForm page={page} language={language} />
          </>
        ) : (
          <p>{words.closed}</p>
        )
      ) : mine === 'invalid' ? (
        <p role="alert">{words.mine.invalid}</p>
      ) : mine === 'gone' ? (
        <p role="status">{words.mine.gone}</p>
      ) : mine === null ? (
        problem === null ? (
          <p role="status">{words.loading}</p>
        ) : null
      ) : (
        <MyOfferView
          mine={mine}
          secret={secret}
          language={language}
          onMine={setMine}
          onGone={() => setMine('gone')}
          drills={
            <Suspense fallback={<p role="status">{words.loading}</p>}>
              <DrillPage
                language={language}
                unit={mine.unit}
                storeKey="gaugewright.offer.drills"
                passMark={mine.passMark}
                onDone={async (sitting) => void (await saveMySitting(secret, sitting))}
                back={{ href: '/offer' }}
              />
            </Suspense>
          }
          yard={
            <Suspense fallback={<p role="status">{words.loading}</p>}>
              <SitePage
                name={mine.offer.name}
                language={language}
                unit={lengthUnitOf(mine.unit)}
                siteKey="my offer"
                saved={mine.plan}
                today={new Date().toISOString().slice(0, 10)}
                onSave={async ({ plan, note, photos }) => {
                  try {
                    const sent = await photosToSend(photos)
                    setMine(await saveMyYard({ secret, id: crypto.randomUUID(), plan, note, photos: sent }))
                    return true
                  } catch (error) {
                    const { seen, advice } = problemFrom(error)
                    setProblem(`${seen}. ${advice}`)
                    return false
                  }
                }}
              />
            </Suspense>
          }
        />
      )}
      <p className={styles.safety}>{words.safety}</p>
    </main>
  )
}

function languageOf(text: string): 'en' | 'es' | null {
  const start = text.slice(0, 2).toLowerCase()
  return start === 'en' || start === 'es' ? start : null
}
