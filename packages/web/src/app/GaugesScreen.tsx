import { useQuery } from '@tanstack/react-query'
import { useEffect } from 'react'
import { useLocation, useRoute } from 'wouter'
import { networkHabitsQuery } from '../api/habits.ts'
import { GaugesPage } from '../features/gauges/GaugesPage.tsx'
import { WordsProvider } from '../words/WordsContext.tsx'
import { useWordsInUse } from './useWordsInUse.ts'
import { ViewMenu } from './ViewMenu.tsx'

/** Gauges in their place: the address tells the gauge, the network unit and language. */
export function GaugesScreen() {
  const [, go] = useLocation()
  const [, route] = useRoute<{ code: string }>('/gauges/:code')
  const habits = useQuery(networkHabitsQuery)
  const network = habits.data?.network
  const { inUse, setLanguage } = useWordsInUse(network)
  const { language, words } = inUse
  const code = route?.code ?? null
  useEffect(() => {
    const name = habits.data?.gauges.find((gauge) => gauge.code === code)?.name ?? words.screens.gauges
    document.title = network ? `${name} · ${network.name}` : words.appName
  }, [words, network, habits.data, code])
  return (
    <WordsProvider value={inUse}>
      <GaugesPage
        code={code}
        onGo={(to) => go(`/gauges/${encodeURIComponent(to)}`)}
        tools={<ViewMenu language={language} onLanguage={setLanguage} />}
      />
    </WordsProvider>
  )
}
