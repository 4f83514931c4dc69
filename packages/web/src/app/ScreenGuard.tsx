import type { ReactNode } from 'react'
import { ErrorBoundary } from 'react-error-boundary'
import { useLocation } from 'wouter'
import { problemFrom } from '../api/problemError.ts'
import { Notice } from '../ui/Notice.tsx'
import { ScreenHeader } from '../ui/ScreenHeader.tsx'
import { WordsProvider } from '../words/WordsContext.tsx'
import styles from './SiteScreen.module.css'
import { useWordsInUse } from './useWordsInUse.ts'

/** Around the screen that is shown: when it fails it says so, and the way to the other screens stays open. */
export function ScreenGuard({ children }: { children: ReactNode }) {
  const [path] = useLocation()
  const { inUse } = useWordsInUse(undefined)
  return (
    <ErrorBoundary
      resetKeys={[path]}
      fallbackRender={({ error, resetErrorBoundary }) => (
        <WordsProvider value={inUse}>
          <ScreenHeader networkName="" tools={null}>
            <h1 className="sr-only">{inUse.words.appName}</h1>
          </ScreenHeader>
          <main className={styles.main}>
            <Notice problem={problemFrom(error)} onRetry={resetErrorBoundary} />
          </main>
        </WordsProvider>
      )}
    >
      {children}
    </ErrorBoundary>
  )
}
