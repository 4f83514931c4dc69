/** The colour theme: what the system asks for, unless the coordinator chose otherwise on this computer. */
export const themes = ['system', 'light', 'dark'] as const
export type Theme = (typeof themes)[number]
const key = 'gaugewright.theme'

export function savedTheme(): Theme {
  try {
    const saved = localStorage.getItem(key)
    return themes.find((theme) => theme === saved) ?? 'system'
  } catch {
    return 'system'
  }
}

export function applySavedTheme(): void {
  applyTheme(savedTheme())
}

export function applyTheme(theme: Theme): void {
  document.documentElement.style.colorScheme = theme === 'system' ? 'light dark' : theme
  document.documentElement.dataset.theme = theme
  try {
    if (theme === 'system') localStorage.removeItem(key)
    else localStorage.setItem(key, theme)
  } catch {
    // Private windows may refuse storage: the choice then lasts until the page is closed.
  }
}
