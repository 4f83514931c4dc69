import type { FileUrgentInput } from '@gaugewright/contract'
import { expect, it } from 'vitest'
import { urgentFormWordsEn, urgentFormWordsEs } from '../../words/urgentFormWords.ts'
import { sayReport } from './sayReport.ts'

const english = { words: urgentFormWordsEn, unit: 'in', language: 'en' } as const
const spanish = { words: urgentFormWordsEs, unit: 'mm', language: 'es' } as const
const said = (seen: FileUrgentInput['seen'], manner: typeof english | typeof spanish) =>
  sayReport({ seen, seenAtUtc: '2026-06-09T16:40:00Z' } as FileUrgentInput, manner).replace(/^[^,]*, /, '')

it.each<[FileUrgentInput['seen'], string, string]>([
  [
    { kind: 'hail', largest: { by: 'object', object: 'golf ball', diameterMm: 44.45 } },
    'Hail, golf ball (1.75 in)',
    'Granizo, pelota de golf (44 mm)',
  ],
  [{ kind: 'hail', largest: { by: 'ruler', diameterMm: 50.8 } }, 'Hail, 2.00 in', 'Granizo, 51 mm'],
  [
    { kind: 'rain', amountUm: 20_320, minutes: 15 },
    'Torrential rain, 0.80 in, 15 min',
    'Lluvia torrencial, 20,3 mm, 15 min',
  ],
  [{ kind: 'snow', depthMm: 38.1, minutes: 60 }, 'Heavy snow, 1.5 in, 60 min', 'Nevada fuerte, 3,8 cm, 60 min'],
  [{ kind: 'flooding', things: ['street', 'basement'] }, 'Flooding, street, basement', 'Inundación, calle, sótano'],
  [
    { kind: 'wind', gustMps: 25.92832, damage: ['trees'] },
    'Wind damage, 58 mph, trees',
    'Daños por viento, 93 km/h, árboles',
  ],
])('%j is said in one line in each language', (seen, inEnglish, inSpanish) => {
  expect(said(seen, english)).toBe(inEnglish)
  expect(said(seen, spanish)).toBe(inSpanish)
})
