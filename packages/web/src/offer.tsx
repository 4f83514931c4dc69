import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { OfferApp } from './app/offer/OfferApp.tsx'
import { applySavedTheme } from './app/theme.ts'
import './app/tokens.css'
import './app/base.css'

applySavedTheme()
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <OfferApp />
  </StrictMode>,
)
