/** A report in one line: what was told of it last. */
import type { FileUrgentInput } from '@gaugewright/contract'
import { formatAmount } from '@gaugewright/science'
import type { UrgentFormWords } from '../../words/urgentFormWords.ts'
import { writeStone } from './hailSizes.ts'
import { mpsPerUnit, speedUnitOf } from './urgentDraft.ts'
import { type Language, type LengthUnit, writeNumber } from './writeNumber.ts'

interface Manner {
  words: UrgentFormWords
  unit: LengthUnit
  language: Language
}

export function sayReport({ seen, seenAtUtc }: FileUrgentInput, manner: Manner): string {
  const { words, language } = manner
  const time = new Intl.DateTimeFormat(language, { timeStyle: 'short' }).format(new Date(seenAtUtc))
  return [time, words.kinds[seen.kind], ...particulars(seen, manner)].join(', ')
}

function particulars(seen: FileUrgentInput['seen'], { words, unit, language }: Manner): string[] {
  const minutes = (count: number) => `${writeNumber(count, 0, language)} min`
  switch (seen.kind) {
    case 'hail': {
      const { diameterMm, object } = seen.largest
      const size = writeStone(diameterMm, unit, language)
      return object ? [`${words.objects[object]} (${size})`] : [size]
    }
    case 'rain':
      return [formatAmount({ amountUm: seen.amountUm, isTrace: false }, unit, language, 'full'), minutes(seen.minutes)]
    case 'snow': {
      const { depthMm } = seen
      const depth =
        unit === 'in'
          ? `${writeNumber(depthMm / 25.4, 1, language)} in`
          : `${writeNumber(depthMm / 10, 1, language)} cm`
      return [depth, minutes(seen.minutes)]
    }
    case 'flooding':
      return seen.things.map((thing) => words.things[thing])
    case 'wind': {
      const speedUnit = speedUnitOf(unit)
      const gust = seen.gustMps
        ? [`${writeNumber(seen.gustMps / mpsPerUnit[speedUnit], 0, language)} ${speedUnit}`]
        : []
      return [...gust, ...(seen.damage ?? []).map((damage) => words.damages[damage])]
    }
  }
}
