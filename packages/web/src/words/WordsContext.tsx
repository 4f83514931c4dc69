import { createContext, type ReactNode, useContext } from 'react'
import type { Format } from './format.ts'
import type { Language, Words } from './messages.ts'

export type WordsInUse = { words: Words; format: Format; language: Language }
const Context = createContext<WordsInUse | null>(null)

export function WordsProvider({ value, children }: { value: WordsInUse; children: ReactNode }) {
  return <Context value={value}>{children}</Context>
}

/** The words and number formats in use. @throws {Error} outside a WordsProvider: a mistake in the code */
export function useWords(): WordsInUse {
  const value = useContext(Context)
  if (!value) throw new Error('useWords needs a WordsProvider above it')
  return value
}
