import { useQuery } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { useLocation, useRoute } from 'wouter'
import { peopleQuery } from '../api/people.ts'
import { DrillPanel } from '../features/drills/DrillPanel.tsx'
import { HoldingLists, type LetterAsked } from '../features/holding/HoldingLists.tsx'
import { RollPanel } from '../features/holding/RollPanel.tsx'
import { LetterDialog } from '../features/people/LetterDialog.tsx'
import { PeoplePage } from '../features/people/PeoplePage.tsx'
import { WordsProvider } from '../words/WordsContext.tsx'
import { useWordsInUse } from './useWordsInUse.ts'
import { ViewMenu } from './ViewMenu.tsx'

/** People in their place: the address tells whom, the network unit and language. */
export function PeopleScreen() {
  const [, go] = useLocation()
  const [, route] = useRoute<{ list: string; id: string }>('/people/:list/:id')
  const desk = useQuery(peopleQuery)
  const network =
    desk.data === undefined
      ? undefined
      : { ...desk.data.network, timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone }
  const { inUse, setLanguage } = useWordsInUse(network)
  const { language, words } = inUse
  const [letter, setLetter] = useState<LetterAsked | null>(null)
  useEffect(() => {
    document.title = network ? `${words.screens.people} · ${network.name}` : words.appName
  }, [words, network])
  return (
    <WordsProvider value={inUse}>
      <PeoplePage
        chosen={route === null ? null : `${route.list}/${decodeURIComponent(route.id)}`}
        onGo={(key) => go(key === '' ? '/people' : `/people/${key}`)}
        above={<HoldingLists onGo={(code) => go(`/people/observers/${code}`)} onWrite={setLetter} />}
        moreOfObserver={({ personId, code, mail }) => (
          <>
            <RollPanel code={code} maySend={mail !== null} />
            {personId === null ? null : <DrillPanel about={`person ${personId}`} />}
          </>
        )}
        moreOfCandidate={({ id }) => <DrillPanel about={`candidate ${id}`} />}
        tools={<ViewMenu language={language} onLanguage={setLanguage} />}
      />
      {letter === null ? null : <LetterDialog {...letter} onClose={() => setLetter(null)} />}
    </WordsProvider>
  )
}
