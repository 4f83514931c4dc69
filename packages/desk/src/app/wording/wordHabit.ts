/** One door to the words about habits, whatever the language. */
import type { Language } from '@gaugewright/science'
import { englishAllowedFor, englishHabit } from './englishHabits.ts'
import type { HabitAsk, HabitWords } from './habitAsk.ts'
import { spanishAllowedFor, spanishHabit } from './spanishHabits.ts'

export function habitWords(ask: HabitAsk): HabitWords {
  switch (ask.language) {
    case 'en':
      return englishHabit(ask)
    case 'es':
      return spanishHabit(ask)
  }
}

/**
 * What the odds of a gauge's readings already allow for, in one or two sentences; null where nothing.
 * @param offsetDays    by which its dates run ahead, as learned
 * @param takenAsHabit  share of what looks misdated or carried that is not doubted
 */
export function allowedForLine(offsetDays: number, takenAsHabit: number, language: Language): string | null {
  return language === 'es' ? spanishAllowedFor(offsetDays, takenAsHabit) : englishAllowedFor(offsetDays, takenAsHabit)
}
