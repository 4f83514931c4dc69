import { useQuery } from '@tanstack/react-query'
import { useEffect } from 'react'
import { ruleQuery } from '../api/rule.ts'
import { SettingsPage } from '../features/settings/SettingsPage.tsx'
import { WordsProvider } from '../words/WordsContext.tsx'
import { useWordsInUse } from './useWordsInUse.ts'
import { ViewMenu } from './ViewMenu.tsx'

/** Settings in their place: the network tells unit and language. */
export function SettingsScreen() {
  const rule = useQuery(ruleQuery)
  const network = rule.data?.network
  const { inUse, setLanguage } = useWordsInUse(network)
  const { language, words } = inUse
  useEffect(() => {
    document.title = network ? `${words.screens.settings} · ${network.name}` : words.appName
  }, [words, network])
  return (
    <WordsProvider value={inUse}>
      <SettingsPage tools={<ViewMenu language={language} onLanguage={setLanguage} />} />
    </WordsProvider>
  )
}
