import { lengthUnitOf } from '@gaugewright/drawings'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import { Link } from 'wouter'
import { networkHabitsQuery } from '../api/habits.ts'
import { problemFrom } from '../api/problemError.ts'
import { reportUrl, saveSurvey, sendSiteReport, siteKey, siteQuery, withdrawSurvey } from '../api/sites.ts'
import type { SaveAsk } from '../features/siting/SaveForm.tsx'
import { SitePage } from '../features/siting/SitePage.tsx'
import { SurveyList } from '../features/siting/SurveyList.tsx'
import { Notice } from '../ui/Notice.tsx'
import { ScreenHeader } from '../ui/ScreenHeader.tsx'
import { sitingWords } from '../words/sitingWords.ts'
import { WordsProvider } from '../words/WordsContext.tsx'
import styles from './SiteScreen.module.css'
import { useWordsInUse } from './useWordsInUse.ts'
import { ViewMenu } from './ViewMenu.tsx'

/** The site of a gauge or of a candidate, in its place among the screens. */
export function SiteScreen({ about, back }: { about: string; back: string }) {
  const client = useQueryClient()
  const site = useQuery(siteQuery(about))
  const habits = useQuery({ ...networkHabitsQuery, enabled: false })
  const network =
    site.data === undefined
      ? undefined
      : { unit: site.data.unit, language: site.data.language, timeZone: 'UTC', name: '' }
  const { inUse, setLanguage } = useWordsInUse(network)
  const { language, words } = inUse
  const keep = (next: NonNullable<typeof site.data>) => client.setQueryData(siteKey(about), next)
  const save = useMutation({
    mutationFn: async ({ surveyedOn, note, plan, photos }: SaveAsk) =>
      saveSurvey({
        about,
        id: crypto.randomUUID(),
        surveyedOn,
        note,
        plan,
        photosBase64: await Promise.all(photos.map(base64Of)),
      }),
    onSuccess: keep,
  })
  const withdraw = useMutation({ mutationFn: withdrawSurvey, onSuccess: keep })
  const send = useMutation({ mutationFn: () => sendSiteReport(about) })
  useEffect(() => {
    document.title = site.data === undefined ? words.appName : `${site.data.name} · ${words.appName}`
  }, [site.data, words])
  const error = save.error ?? withdraw.error ?? send.error
  const latest = site.data?.surveys.find(({ isTakenBack }) => !isTakenBack)
  return (
    <WordsProvider value={inUse}>
      <ScreenHeader
        networkName={habits.data?.network.name ?? ''}
        tools={<ViewMenu language={language} onLanguage={setLanguage} />}
      >
        <h1 className="sr-only">{site.data?.name ?? ''}</h1>
      </ScreenHeader>
      <main className={styles.main}>
        <Link href={back}>← {sitingWords[language].back}</Link>
        {site.data ? (
          <SitePage
            key={about}
            name={site.data.name}
            language={language}
            unit={lengthUnitOf(site.data.unit)}
            siteKey={about}
            saved={latest?.plan ?? null}
            today={site.data.today}
            mayKeepPhotos
            problem={error ? <Notice problem={problemFrom(error)} /> : null}
            onSave={async (ask) => {
              try {
                await save.mutateAsync(ask)
                return true
              } catch {
                return false
              }
            }}
            history={(onLoad) => (
              <SurveyList
                site={site.data}
                language={language}
                reportUrl={reportUrl(about)}
                onLoad={onLoad}
                onWithdraw={(surveyId, undo) => withdraw.mutate({ about, surveyId, undo })}
                onSend={() => send.mutate()}
                isSent={send.isSuccess}
              />
            )}
          />
        ) : site.error ? (
          <Notice problem={problemFrom(site.error)} onRetry={() => void site.refetch()} />
        ) : (
          <p role="status">{words.loading}</p>
        )}
      </main>
    </WordsProvider>
  )
}

async function base64Of(file: File): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer())
  let text = ''
  for (let from = 0; from < bytes.length; from += 32_768)
    text += String.fromCharCode(...bytes.subarray(from, from + 32_768))
  return btoa(text)
}
