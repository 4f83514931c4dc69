import { useSyncExternalStore } from 'react'

const system = () => matchMedia('(prefers-color-scheme: dark)')

function isDark(): boolean {
  const theme = document.documentElement.dataset.theme
  return theme === 'dark' || (theme !== 'light' && system().matches)
}

function subscribe(changed: () => void): () => void {
  const media = system()
  media.addEventListener('change', changed)
  const observer = new MutationObserver(changed)
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] })
  return () => {
    media.removeEventListener('change', changed)
    observer.disconnect()
  }
}

/** Whether the page is dark now: for what CSS cannot colour, such as a canvas. */
export function useIsDark(): boolean {
  return useSyncExternalStore(subscribe, isDark)
}
