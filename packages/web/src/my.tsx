import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { ObserverApp } from './app/my/ObserverApp.tsx'
import { applySavedTheme } from './app/theme.ts'
import './app/tokens.css'
import './app/base.css'
import './app/my/my.css'

applySavedTheme()
if (import.meta.env.PROD && 'serviceWorker' in navigator) {
  // Without the worker the page works too, but only opens with a signal.
  navigator.serviceWorker.register('/my/worker.js', { scope: '/my/' }).catch(() => undefined)
}
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <ObserverApp />
  </StrictMode>,
)
