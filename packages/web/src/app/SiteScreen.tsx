import type { SurveyPhoto } from '@gaugewright/contract'
import { lengthUnitOf } from '@gaugewright/drawings'
import { isDrawn } from '@gaugewright/science'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import { Link } from 'wouter'
import { networkHabitsQuery } from '../api/habits.ts'
import { askPhoto, photosToSend } from '../api/photos/surveyPhotos.ts'
import { problemFrom } from '../api/problemError.ts'
import { askSurvey, reportUrl, saveSurvey, sendSiteReport, siteKey, siteQuery, withdrawSurvey } from '../api/sites.ts'
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
        photos: await photosToSend(photos),
      }),
    onSuccess: keep,
  })
  const withdraw = useMutation({ mutationFn: withdrawSurvey, onSuccess: keep })
  const send = useMutation({ mutationFn: () => sendSiteReport(about) })
  useEffect(() => {
    document.title = site.data === undefined ? words.appName : `${site.data.name} · ${words.appName}`
  }, [site.data, words])
  const ask = useMutation({
    mutationFn: () => askSurvey({ about, why: sitingWords[language].history.why }),
    onSuccess: keep,
  })
  const measure = useMutation({ mutationFn: ({ sha256 }: SurveyPhoto) => askPhoto(sha256) })
  const error = measure.error ?? ask.error ?? save.error ?? withdraw.error ?? send.error
  const latest = site.data?.surveys.find(({ isTakenBack, plan }) => !isTakenBack && isDrawn(plan))
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
            problem={error ? <Notice problem={problemFrom(error)} /> : null}
            onSave={async (ask) => {
              try {
                await save.mutateAsync(ask)
                return true
              } catch {
                return false
              }
            }}
            history={({ onLoad, onMeasure }) => (
              <SurveyList
                site={site.data}
                language={language}
                reportUrl={reportUrl(about)}
                onLoad={onLoad}
                onMeasure={(photo) =>
                  void measure.mutateAsync(photo).then(
                    (file) => onMeasure(file, photo),
                    () => undefined,
                  )
                }
                onWithdraw={(surveyId, undo) => withdraw.mutate({ about, surveyId, undo })}
                onSend={() => send.mutate()}
                onAsk={about.startsWith('gauge ') ? () => ask.mutate() : null}
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
