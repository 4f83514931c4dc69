import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useEffect, useMemo } from 'react'
import { useLocation, useRoute, useSearchParams } from 'wouter'
import { reviewQuery } from '../api/queries.ts'
import { FieldMap } from '../features/fieldMap/FieldMap.tsx'
import { TodayPage } from '../features/today/TodayPage.tsx'
import { useStored } from '../hooks/useStored.ts'
import { makeFormat } from '../words/format.ts'
import { type Language, messages } from '../words/messages.ts'
import { WordsProvider } from '../words/WordsContext.tsx'
import { ViewMenu } from './ViewMenu.tsx'

/** Today in its place: the address tells the day and the gauge, the network tells unit and language. */
export function TodayScreen() {
  const [, go] = useLocation()
  const [, route] = useRoute('/days/:day')
  const [search] = useSearchParams()
  const dayAsked = route?.day ?? 'latest'
  const review = useQuery({ ...reviewQuery(dayAsked), placeholderData: keepPreviousData })
  const network = review.data?.network
  const [chosenLanguage, setLanguage] = useStored('gaugewright.language', '')
  const language: Language =
    readLanguage(chosenLanguage) ?? network?.language ?? readLanguage(navigator.language) ?? 'en'
  const unit = network?.unit ?? 'mm'
  const timeZone = network?.timeZone ?? 'UTC'
  const inUse = useMemo(
    () => ({ words: messages[language], format: makeFormat(messages[language], language, unit, timeZone), language }),
    [language, unit, timeZone],
  )
  const day = review.data?.day
  useEffect(() => {
    document.documentElement.lang = language
    const { words, format } = inUse
    document.title = day && network ? `${format.dayShort(day)} · ${network.name}` : words.appName
  }, [language, inUse, day, network])
  const pathOf = (to: string) => (to === review.data?.lastDay ? '/' : `/days/${to}`)
  return (
    <WordsProvider value={inUse}>
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
    </WordsProvider>
  )
}

function readLanguage(text: string): Language | null {
  const start = text.slice(0, 2).toLowerCase()
  return start === 'en' || start === 'es' ? start : null
}
