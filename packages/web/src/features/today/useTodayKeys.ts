import { useEffect, useRef } from 'react'
import { actOfKey, type KeyAct } from './keys.ts'

const typing = 'input:not([type=radio]):not([type=checkbox]), textarea, select, [contenteditable=true]'

/** Listens for the keys of Today on the whole page; while something is typed, or a dialog is open, only where it may. */
export function useTodayKeys(singleKeysOn: boolean, onAct: (act: KeyAct) => void): void {
  const latest = useRef(onAct)
  latest.current = onAct
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing) return
      const act = actOfKey(event)
      if (!act) return
      const target = event.target instanceof Element ? event.target : null
      if (document.querySelector('dialog[open]')) return
      if (act !== 'close' && target?.closest(typing)) return
      if (event.key.startsWith('Arrow') && target?.matches('input')) return
      if (!singleKeysOn && act !== 'close' && !event.key.startsWith('Arrow')) return
      event.preventDefault()
      latest.current(act)
    }
    window.addEventListener('keydown', onKeyDown)
    return () => window.removeEventListener('keydown', onKeyDown)
  }, [singleKeysOn])
}
