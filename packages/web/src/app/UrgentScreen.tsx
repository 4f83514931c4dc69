import { useQuery } from '@tanstack/react-query'
import { useEffect } from 'react'
import { useLocation, useRoute } from 'wouter'
import { urgentQuery } from '../api/urgent.ts'
import { UrgentPage } from '../features/urgent/UrgentPage.tsx'
import { WordsProvider } from '../words/WordsContext.tsx'
import { useWordsInUse } from './useWordsInUse.ts'
import { ViewMenu } from './ViewMenu.tsx'

/** Urgent in its place: the address tells the report, the network unit and language. */
export function UrgentScreen() {
  const [, go] = useLocation()
  const [, route] = useRoute<{ report: string }>('/urgent/:report')
  const network = useQuery(urgentQuery).data?.network
  const { inUse, setLanguage } = useWordsInUse(network)
  const { language, words } = inUse
  useEffect(() => {
    document.title = network ? `${words.screens.urgent} · ${network.name}` : words.appName
  }, [words, network])
  return (
    <WordsProvider value={inUse}>
      <UrgentPage
        chosenId={route?.report ?? null}
        onGo={(id) => go(`/urgent/${encodeURIComponent(id)}`)}
        onBack={() => go('/urgent')}
        tools={<ViewMenu language={language} onLanguage={setLanguage} />}
      />
    </WordsProvider>
  )
}
