import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useEffect } from 'react'
import { useLocation, useRoute, useSearchParams } from 'wouter'
import { reviewQuery } from '../api/queries.ts'
import { FieldMap } from '../features/fieldMap/FieldMap.tsx'
import { TodayPage } from '../features/today/TodayPage.tsx'
import { UrgentStrip } from '../features/urgent/UrgentStrip.tsx'
import { WordsProvider } from '../words/WordsContext.tsx'
import styles from './TodayScreen.module.css'
import { useWordsInUse } from './useWordsInUse.ts'
import { ViewMenu } from './ViewMenu.tsx'

/** Today in its place: the address tells the day and the gauge, the network tells unit and language. */
export function TodayScreen() {
  const [, go] = useLocation()
  const [, route] = useRoute('/days/:day')
  const [search] = useSearchParams()
  const dayAsked = route?.day ?? 'latest'
  const review = useQuery({ ...reviewQuery(dayAsked), placeholderData: keepPreviousData })
  const network = review.data?.network
  const { inUse, setLanguage } = useWordsInUse(network)
  const { format, language, words } = inUse
  const day = review.data?.day
  useEffect(() => {
    document.title = day && network ? `${format.dayShort(day)} · ${network.name}` : words.appName
  }, [format, words, day, network])
  const pathOf = (to: string) => (to === review.data?.lastDay ? '/' : `/days/${to}`)
  return (
    <WordsProvider value={inUse}>
      <div className={styles.screen}>
        <UrgentStrip />
        <TodayPage
          dayAsked={dayAsked}
          gaugeId={search.get('gauge')}
          onDay={(to) => go(pathOf(to))}
          onGauge={(gaugeId) =>
            go(`${route ? `/days/${route.day}` : '/'}?gauge=${encodeURIComponent(gaugeId)}`, { replace: true })
          }
          map={(ask) => <FieldMap {...ask} />}
          tools={<ViewMenu language={language} onLanguage={setLanguage} />}
        />
      </div>
    </WordsProvider>
  )
}
