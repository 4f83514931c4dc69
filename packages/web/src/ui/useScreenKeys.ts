import { useEffect, useRef } from 'react'
import { screenOfKey } from './screens.ts'

const typing = 'input:not([type=radio]):not([type=checkbox]), textarea, select, [contenteditable=true]'

/** Digits go to the screens, on the whole page; not while something is typed, a dialog is open, or single keys are off. */
export function useScreenKeys(go: (path: string) => void): void {
  const latest = useRef(go)
  latest.current = go
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing) return
      const screen = screenOfKey(event)
      if (!screen || singleKeysOff() || document.querySelector('dialog[open]')) return
      if (event.target instanceof Element && event.target.closest(typing)) return
      event.preventDefault()
      latest.current(screen.path)
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [])
}

/** The choice made in the list of keys. */
function singleKeysOff(): boolean {
  try {
    return localStorage.getItem('gaugewright.singleKeys') === 'off'
  } catch {
    return false
  }
}
