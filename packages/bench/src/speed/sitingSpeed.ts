/** The best spot of a large yard, many times: what a browser's worker does, measured in Node. */
import { bestSpots, type Obstacle, seededRandom, type YardPlan } from '@gaugewright/science'
import type { SpeedLine } from './speedLine.ts'
import { median } from './timings.ts'

const SIDE_M = 60
const OBSTACLES = 30

export async function sitingSpeed(): Promise<SpeedLine[]> {
  const plan = largeYard()
  const times: number[] = []
  let cells = 0
  for (let run = 0; run < 9; run++) {
    const from = performance.now()
    const { grid } = bestSpots(plan, { rimM: 0.6 })
    times.push(performance.now() - from)
    cells = grid.columns * grid.rows
  }
  const what = `best spot: ${SIDE_M} x ${SIDE_M} m, ${OBSTACLES} obstacles, ${cells} cells under 1 m`
  return [
    {
      what,
      figure: `${Math.round(median(times))} ms (median of ${times.length}), first ${Math.round(times[0]!)} ms`,
      aim: 'below 1 s',
    },
  ]
}

function largeYard(): YardPlan {
  const random = seededRandom(60)
  const at = () => Math.round(random() * SIDE_M * 2) / 2
  const obstacles = Array.from({ length: OBSTACLES }, (_, k): Obstacle => {
    const [xM, yM] = [at(), at()]
    const base = { id: `o${k}`, name: '' }
    if (k % 3 === 0) {
      const ring = [
        { xM, yM },
        { xM: xM + 8, yM },
        { xM: xM + 8, yM: yM + 6 },
        { xM, yM: yM + 6 },
      ]
      const ridge = [
        { xM, yM: yM + 3 },
        { xM: xM + 8, yM: yM + 3 },
      ] as const
      return { ...base, kind: 'house', shape: { form: 'gable', ring, eavesM: 3, ridge, ridgeM: 6 } }
    }
    if (k % 3 === 1) return { ...base, kind: 'tree', shape: { form: 'round', center: { xM, yM }, radiusM: 2, topM: 8 } }
    return {
      ...base,
      kind: 'fence',
      shape: {
        form: 'line',
        points: [
          { xM, yM },
          { xM: xM + 9, yM: yM + 1 },
        ],
        topM: 1.8,
      },
    }
  })
  const outline = [
    { xM: 0, yM: 0 },
    { xM: SIDE_M, yM: 0 },
    { xM: SIDE_M, yM: SIDE_M },
    { xM: 0, yM: SIDE_M },
  ]
  return { outline, obstacles, hazards: [], slopeDeg: 0, gauge: null }
}
