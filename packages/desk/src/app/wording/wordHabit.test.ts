import { type Habit, type HabitKind, habitKinds } from '@gaugewright/science'
import { describe, expect, it } from 'vitest'
import type { HabitAsk } from './habitAsk.ts'
import { allowedForLine, habitWords } from './wordHabit.ts'

const figures: Record<HabitKind, Pick<Habit, 'value' | 'low' | 'high' | 'usual'>> = {
  dated: { value: -0.93, low: -0.97, high: -0.88, usual: 0.02 },
  shifting: { value: 2.4, low: 1.6, high: 3.3, usual: 0.98 },
  carried: { value: 4.4, low: 3.1, high: 5.8, usual: 0.97 },
  fives: { value: 0.41, low: 0.33, high: 0.49, usual: 0.01 },
  tens: { value: 0.72, low: 0.66, high: 0.77, usual: 0.01 },
  coarse: { value: 1, low: 1, high: 1, usual: 0.1 },
  'off-steps': { value: 0.12, low: 0.09, high: 0.15, usual: 0 },
  'few-light': { value: 0.24, low: 0.18, high: 0.31, usual: 0.97 },
  'fits-poorly': { value: 0.71, low: 0.66, high: 0.76, usual: 0.99 },
  mistaken: { value: 2.1, low: 1.5, high: 2.8, usual: 0.96 },
}

function askOf(kind: HabitKind, language: 'en' | 'es', unit: 'mm' | 'in', change: Partial<Habit> = {}): HabitAsk {
  const habit: Habit = { kind, ...figures[kind], sure: 0.98, isHabit: true, strength: 0.5, readings: 1013, ...change }
  return { language, unit, habit, stepMm: unit === 'in' ? 0.254 : 0.1, totalsEndOn: null }
}

const doors = [
  ['en', 'mm'],
  ['en', 'in'],
  ['es', 'mm'],
  ['es', 'in'],
] as const
const blame =
  /\b(wrong|error|fault|forgot\w*|fail\w*|incorrect|careless|bad|mal|errad[oa]s?|errores|olvid\w*|culpa|incorrect[oa]s?)\b/i

describe.each(doors)('habits in %s, amounts in %s', (language, unit) => {
  it.each(habitKinds)('%s: whole sentences with their figures, kind ones, and something to do', (kind) => {
    const { sentence, advice } = habitWords(askOf(kind, language, unit))
    for (const text of [sentence, advice]) {
      expect(text).toMatch(/^[A-ZÁÉÍÓÚ].*\.$/)
      expect(text).not.toMatch(/undefined|NaN|null|\$\{|Infinity/)
      // "Its readings are not wrong for that" is the one place where the word may stand.
      expect(text.replace(/not wrong|No por eso sus lecturas son malas/, '')).not.toMatch(blame)
    }
    expect(sentence).not.toMatch(unit === 'in' ? /\d mm\b/ : /\d in\b/)
    expect(advice.length).toBeGreaterThan(30)
  })

  it.each(habitKinds)('%s: what is not sure is not told, and asks for nothing', (kind) => {
    const usual = habitWords(askOf(kind, language, unit, { isHabit: false, sure: 0.4 }))
    expect(usual.sentence).not.toBe(habitWords(askOf(kind, language, unit)).sentence)
    expect(usual.sentence).toMatch(/\.$/)
    expect(usual.advice).toMatch(language === 'en' ? /nothing to do/ : /nada que hacer/)
  })
})

describe('what the sentences say', () => {
  it('a day late is the rain of the day before, a day early that of the next, part of a day a matter of hours', () => {
    const of = (value: number) => habitWords(askOf('dated', 'en', 'mm', { value })).sentence
    expect(of(-0.93)).toContain("reports the day before's rain")
    expect(of(0.98)).toContain("reports the next day's rain")
    expect(of(0.44)).toContain('ends about 11 hours later')
    expect(of(-0.3)).toContain('ends about 7 hours earlier')
  })

  it('amounts are said in the unit of the network', () => {
    expect(habitWords(askOf('fives', 'en', 'mm')).sentence).toContain(
      'multiples of 0.5 mm (33 to 49\u00a0%), from 1,013',
    )
    expect(habitWords(askOf('fives', 'en', 'in')).sentence).toContain('multiples of 0.05 in')
    expect(habitWords(askOf('few-light', 'es', 'mm')).sentence).toContain('menores de 1,3 mm')
    expect(habitWords(askOf('few-light', 'en', 'in')).sentence).toContain('below 0.05 in')
  })

  it('a share near the whole is said so, not to the percent', () => {
    expect(habitWords(askOf('fives', 'en', 'mm', { value: 0.98 })).sentence).toMatch(/^Nearly all of its amounts/)
    expect(habitWords(askOf('tens', 'es', 'mm', { value: 0.98 })).sentence).toMatch(/^Casi todas sus cantidades/)
  })

  it('the weekday of the totals is named where one stands out', () => {
    expect(habitWords({ ...askOf('carried', 'en', 'mm'), totalsEndOn: 0 }).sentence).toContain('mostly on Mondays')
    expect(habitWords({ ...askOf('carried', 'es', 'mm'), totalsEndOn: 6 }).sentence).toContain('los domingos')
    expect(habitWords(askOf('carried', 'en', 'mm')).sentence).not.toContain('mostly')
  })
})

describe('allowedForLine', () => {
  it('tells what the odds of a reading already allow for, in one line', () => {
    expect(allowedForLine(-1, 0, 'en')).toBe(
      "This gauge usually reports the day before's rain. Its readings are judged by the days they stand for.",
    )
    expect(allowedForLine(0.5, 0, 'es')).toContain('unas 12 horas después')
    expect(allowedForLine(0, 0.84, 'en')).toContain('84\u00a0%')
    expect(allowedForLine(0, 0.84, 'es')).toContain('84\u00a0%')
  })

  it('is silent where there is nothing to allow for', () => {
    for (const language of ['en', 'es'] as const) expect(allowedForLine(0, 0.2, language)).toBeNull()
  })
})
