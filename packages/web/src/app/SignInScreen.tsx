import { useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import { useSearchParams } from 'wouter'
import { whoKey } from '../api/access.ts'
import { SignInPage } from '../features/signIn/SignInPage.tsx'
import { pathAfter } from '../features/signIn/signInView.ts'
import { WordsProvider } from '../words/WordsContext.tsx'
import { useWordsInUse } from './useWordsInUse.ts'
import { ViewMenu } from './ViewMenu.tsx'

/** Signing in, in its place. Afterwards the page is loaded anew, so that nothing of another person is left in it. */
export function SignInScreen() {
  const client = useQueryClient()
  const [search] = useSearchParams()
  const { inUse, setLanguage } = useWordsInUse(undefined)
  const { language, words } = inUse
  useEffect(() => {
    document.title = `${words.access.signIn} · ${words.appName}`
  }, [words])
  return (
    <WordsProvider value={inUse}>
      <SignInPage
        tools={<ViewMenu language={language} onLanguage={setLanguage} />}
        onSignedIn={(who) => {
          client.setQueryData(whoKey, who)
          location.assign(pathAfter(search.get('next'), who.actor?.role ?? 'viewer'))
        }}
      />
    </WordsProvider>
  )
}
