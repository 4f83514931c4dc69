import type { UrgentKind } from '@gaugewright/contract'

/** What the form shows. It stands behind the # of the address, so that the phone's own way back works. */
export type FormView = { at: 'start' } | { at: 'first'; kind: UrgentKind } | { at: 'report'; reportId: string }

const ROOT = '#urgent'
/** Of the contract; repeated here so that the page that only asks for the address need not load its schemas. */
const kinds: readonly UrgentKind[] = ['hail', 'rain', 'flooding', 'wind', 'snow']

/** Whether the page at this address is the form. */
export function isFormHash(hash: string): boolean {
  return hash === ROOT || hash.startsWith(`${ROOT}/`)
}

export function viewFromHash(hash: string): FormView {
  const [, kindOrReport, id] = hash.split('/')
  const kind = kinds.find((one) => one === kindOrReport)
  if (kind !== undefined) return { at: 'first', kind }
  return kindOrReport === 'report' && id !== undefined && id !== '' ? { at: 'report', reportId: id } : { at: 'start' }
}

export function hashOf(view: FormView): string {
  if (view.at === 'first') return `${ROOT}/${view.kind}`
  return view.at === 'report' ? `${ROOT}/report/${view.reportId}` : ROOT
}
