/**
 * The screens of the desk, in the order in which they are offered. A new screen adds itself here, its name to the words, and
 * its route to app/App.tsx. The key of a screen is its place in the order in which the screens were planned, so that it
 * stays the same as screens are added.
 */
export type ScreenId = 'today' | 'urgent' | 'gauges' | 'people' | 'settings'

export interface Screen {
  id: ScreenId
  path: string
  key: string
  /** Whether an address belongs to the screen. */
  holds: (path: string) => boolean
}

export const screens: readonly Screen[] = [
  { id: 'today', path: '/', key: '1', holds: (path) => path === '/' || path.startsWith('/days/') },
  { id: 'urgent', path: '/urgent', key: '2', holds: (path) => path === '/urgent' || path.startsWith('/urgent/') },
  { id: 'gauges', path: '/gauges', key: '3', holds: (path) => path === '/gauges' || path.startsWith('/gauges/') },
  { id: 'people', path: '/people', key: '4', holds: (path) => path === '/people' || path.startsWith('/people/') },
  { id: 'settings', path: '/settings', key: '8', holds: (path) => path === '/settings' },
]

/** The screen that a pressed key goes to: digits alone, without a chord. */
export function screenOfKey(press: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'altKey' | 'metaKey'>): Screen | null {
  if (press.ctrlKey || press.altKey || press.metaKey) return null
  return screens.find(({ key }) => key === press.key) ?? null
}
