import { useEffect, useRef } from 'react'

const typing = 'input:not([type=radio]):not([type=checkbox]), textarea, select, [contenteditable=true]'

/** Single keys of a screen: not while something is typed, a chord is pressed, a dialog is open, or single keys are off. */
export function useSingleKeys(acts: Readonly<Record<string, () => void>>): void {
  const latest = useRef(acts)
  latest.current = acts
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing || event.ctrlKey || event.altKey || event.metaKey) return
      const act = latest.current[event.key]
      if (!act || singleKeysOff() || document.querySelector('dialog[open]')) return
      if (event.target instanceof Element && event.target.closest(typing)) return
      event.preventDefault()
      act()
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
