import type { ReactNode } from 'react'
import { ErrorBoundary } from 'react-error-boundary'
import { problemFrom } from '../../api/problemError.ts'
import { Notice } from '../../ui/Notice.tsx'

/** One section of Settings: when it fails it says so in its own place, with a way to try again, and the others go on. */
export function Guarded({ children }: { children: ReactNode }) {
  return (
    <ErrorBoundary
      fallbackRender={({ error, resetErrorBoundary }) => (
        <Notice problem={problemFrom(error)} onRetry={resetErrorBoundary} />
      )}
    >
      {children}
    </ErrorBoundary>
  )
}
