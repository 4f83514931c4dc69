import { useState } from 'react'
import { Button } from '../ui/Button.tsx'
import { Choice } from '../ui/Choice.tsx'
import type { Language } from '../words/messages.ts'
import { useWords } from '../words/WordsContext.tsx'
import { applyTheme, savedTheme, type Theme, themes } from './theme.ts'
import styles from './ViewMenu.module.css'
import { WhoIsIn } from './WhoIsIn.tsx'

type Props = { language: Language; onLanguage: (language: Language) => void }

/** Colours, language and who is signed in, in a popover of the platform: it closes on Esc and on a click beside it. */
export function ViewMenu({ language, onLanguage }: Props) {
  const { words } = useWords()
  const [theme, setTheme] = useState<Theme>(savedTheme)
  return (
    <>
      <Button popoverTarget="view-menu">{words.settings}</Button>
      <div id="view-menu" popover="auto" className={styles.menu}>
        <Choice
          label={words.theme}
          value={theme}
          options={themes.map((value) => ({ value, label: words.themeNames[value] }))}
          onChange={(next) => {
            setTheme(next)
            applyTheme(next)
          }}
        />
        <Choice
          label={words.language}
          value={language}
          options={(['en', 'es'] as const).map((value) => ({ value, label: words.languageNames[value] }))}
          onChange={onLanguage}
        />
        <WhoIsIn />
      </div>
    </>
  )
}
