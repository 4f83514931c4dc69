import { useState } from 'react'
import { Choice } from '../../ui/Choice.tsx'
import type { MyWords } from '../../words/myWords.ts'
import { applyTheme, savedTheme, type Theme, themes } from '../theme.ts'

export function ThemeChoice({ words }: { words: MyWords }) {
  const [theme, setTheme] = useState<Theme>(savedTheme)
  return (
    <Choice
      label={words.options.theme}
      value={theme}
      options={themes.map((value) => ({ value, label: words.options.themes[value] }))}
      onChange={(next) => {
        setTheme(next)
        applyTheme(next)
      }}
    />
  )
}
