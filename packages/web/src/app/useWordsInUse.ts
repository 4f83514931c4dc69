import type { DayReview } from '@gaugewright/contract'
import { useEffect, useMemo } from 'react'
import { useStored } from '../hooks/useStored.ts'
import { makeFormat } from '../words/format.ts'
import { type Language, messages } from '../words/messages.ts'
import type { WordsInUse } from '../words/WordsContext.tsx'

type Network = Pick<DayReview['network'], 'unit' | 'timeZone' | 'language'>

/** Words and formats of a screen: the language chosen here, else the network's, else the browser's; the network's unit. */
export function useWordsInUse(network: Network | undefined): {
  inUse: WordsInUse
  setLanguage: (language: Language) => void
} {
  const [chosenLanguage, setLanguage] = useStored('gaugewright.language', '')
  const language: Language =
    readLanguage(chosenLanguage) ?? network?.language ?? readLanguage(navigator.language) ?? 'en'
  const unit = network?.unit ?? 'mm'
  const timeZone = network?.timeZone ?? 'UTC'
  useEffect(() => {
    document.documentElement.lang = language
  }, [language])
  const inUse = useMemo(
    () => ({ words: messages[language], format: makeFormat(messages[language], language, unit, timeZone), language }),
    [language, unit, timeZone],
  )
  return { inUse, setLanguage }
}

function readLanguage(text: string): Language | null {
  const start = text.slice(0, 2).toLowerCase()
  return start === 'en' || start === 'es' ? start : null
}
