/** A plan from obstacles as somebody saw them standing at the gauge: bearing, distance, height, one line each. */
import { type Obstacle, obstacleKinds, type YardPlan } from '@gaugewright/science'
import Papa from 'papaparse'
import { type Answer, answered, refused } from '../app/answer.ts'

const needed = ['bearing_deg', 'distance_m', 'top_m'] as const
/** A house wall or a crown at a few metres, where nobody measured. */
const USUAL_WIDTH_DEG = 20
/** Yard drawn around the gauge, where only obstacles are known. */
const AROUND_M = 3

export function planFromSightings(csv: string, rimM: number): Answer<YardPlan> {
  const { data, meta } = Papa.parse<Record<string, string>>(csv.replace(/^\uFEFF/, ''), {
    header: true,
    skipEmptyLines: 'greedy',
    transformHeader: (name) => name.trim().toLowerCase(),
  })
  const missing = needed.filter((name) => !(meta.fields ?? []).includes(name))
  if (missing.length > 0) {
    const seen = `no column ${missing.join(', ')}`
    return refused('PLAN_UNREADABLE', seen, `Name the columns: name, kind, ${needed.join(', ')}, width_deg.`)
  }
  const obstacles: Obstacle[] = []
  for (const [index, row] of data.entries()) {
    const numbers = [...needed, 'width_deg' as const].map((name) => {
      const text = row[name]?.trim() ?? ''
      return name === 'width_deg' && text === '' ? USUAL_WIDTH_DEG : text === '' ? Number.NaN : Number(text)
    })
    const bad = numbers.findIndex((number) => !Number.isFinite(number))
    if (bad >= 0) {
      const name = [...needed, 'width_deg'][bad]!
      return refused(
        'PLAN_UNREADABLE',
        `line ${index + 2}, ${name}: "${row[name] ?? ''}"`,
        'Give a number; decimals with a point.',
      )
    }
    const kind = obstacleKinds.find((known) => known === row.kind?.trim().toLowerCase()) ?? 'other'
    const [bearingDeg, distanceM, topM, widthDeg] = numbers as [number, number, number, number]
    obstacles.push({
      id: `seen ${index + 1}`,
      kind,
      name: row.name?.trim() ?? '',
      shape: { form: 'bearing', seenFrom: { xM: 0, yM: 0 }, bearingDeg, distanceM, topM, widthDeg },
    })
  }
  return answered({
    outline: [
      { xM: -AROUND_M, yM: -AROUND_M },
      { xM: AROUND_M, yM: -AROUND_M },
      { xM: AROUND_M, yM: AROUND_M },
      { xM: -AROUND_M, yM: AROUND_M },
    ],
    obstacles,
    hazards: [],
    slopeDeg: null,
    gauge: { at: { xM: 0, yM: 0 }, rimM, hasWindShield: false },
  })
}
