import type { UrgentKind } from '@gaugewright/contract'
import { urgentKinds } from '@gaugewright/contract'
import { useEffect, useState } from 'react'

/** What the form shows. It stands behind the # of the address, so that the phone's own way back works. */
export type FormView = { at: 'start' } | { at: 'first'; kind: UrgentKind } | { at: 'report'; reportId: string }

const ROOT = '#urgent'

/** Whether the page at this address is the form. */
export function isFormHash(hash: string): boolean {
  return hash === ROOT || hash.startsWith(`${ROOT}/`)
}

export function viewFromHash(hash: string): FormView {
  const [, kindOrReport, id] = hash.split('/')
  const kind = urgentKinds.find((one) => one === kindOrReport)
  if (kind !== undefined) return { at: 'first', kind }
  return kindOrReport === 'report' && id !== undefined && id !== '' ? { at: 'report', reportId: id } : { at: 'start' }
}

export function hashOf(view: FormView): string {
  if (view.at === 'first') return `${ROOT}/${view.kind}`
  return view.at === 'report' ? `${ROOT}/report/${view.reportId}` : ROOT
}

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
