import { useEffect, useState } from 'react'
import { type FormView, hashOf, viewFromHash } from './formView.ts'

export function useFormView(): [FormView, (view: FormView, options?: { replace: boolean }) => void] {
  const [view, setView] = useState(() => viewFromHash(location.hash))
  useEffect(() => {
    const follow = () => setView(viewFromHash(location.hash))
    addEventListener('popstate', follow)
    addEventListener('hashchange', follow)
    return () => {
      removeEventListener('popstate', follow)
      removeEventListener('hashchange', follow)
    }
  }, [])
  const go = (next: FormView, options = { replace: false }) => {
    if (options.replace) history.replaceState(null, '', hashOf(next))
    else history.pushState(null, '', hashOf(next))
    setView(next)
    scrollTo(0, 0)
  }
  return [view, go]
}
