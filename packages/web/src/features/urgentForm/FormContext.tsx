import type { UrgentForm } from '@gaugewright/contract'
import { createContext, type ReactNode, useContext } from 'react'
import type { UrgentFormWords } from '../../words/urgentFormWords.ts'
import type { Language, LengthUnit } from './writeNumber.ts'

export interface FormInUse {
  words: UrgentFormWords
  language: Language
  unit: LengthUnit
  form: UrgentForm
}

const Context = createContext<FormInUse | null>(null)

export function FormProvider({ value, children }: { value: FormInUse; children: ReactNode }) {
  return <Context value={value}>{children}</Context>
}

/** @throws {Error} outside a FormProvider: a mistake in the code */
export function useFormInUse(): FormInUse {
  const value = useContext(Context)
  if (value === null) throw new Error('useFormInUse needs a FormProvider above it')
  return value
}
