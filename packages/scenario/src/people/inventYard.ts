/** An invented yard around a gauge, of a given openness: house, trees, fences, now and then a sprinkler. */
import type { Obstacle, YardPlan, YardPoint } from '@gaugewright/science'
import type { Random } from '../random/random.ts'

/** @param openness  0 crowded to 1 open */
export function inventYard(random: Random, openness: number): YardPlan {
  const widthM = half(16 + 24 * random.next())
  const depthM = half(20 + 26 * random.next())
  const gauge = { xM: half(widthM * (0.35 + 0.3 * random.next())), yM: half(depthM * (0.25 + 0.2 * random.next())) }
  const obstacles: Obstacle[] = []
  const add = (kind: Obstacle['kind'], shape: Obstacle['shape']) =>
    obstacles.push({ id: `item ${obstacles.length + 1}`, kind, name: '', shape })
  const houseW = half(9 + 5 * random.next())
  const houseD = half(7 + 3 * random.next())
  const west = half((widthM - houseW) * random.next())
  const south = half(depthM - houseD - 2)
  const corner = (x: number, y: number): YardPoint => ({ xM: west + x, yM: south + y })
  add('house', {
    form: 'gable',
    ring: [corner(0, 0), corner(houseW, 0), corner(houseW, houseD), corner(0, houseD)],
    eavesM: 3,
    ridge: [corner(0, houseD / 2), corner(houseW, houseD / 2)],
    ridgeM: 5.5,
  })
  add('fence', {
    form: 'line',
    points: [
      { xM: 0, yM: 0 },
      { xM: widthM, yM: 0 },
      { xM: widthM, yM: half(depthM * 0.7) },
    ],
    topM: half(1 + random.next()),
  })
  const trees = Math.round((1 - openness) * 5)
  for (let tree = 0; tree < trees; tree++) {
    const bearing = 2 * Math.PI * random.next()
    const awayM = 3.5 + 9 * openness + 5 * random.next()
    const center = { xM: half(gauge.xM + awayM * Math.sin(bearing)), yM: half(gauge.yM + awayM * Math.cos(bearing)) }
    const isByHouse =
      center.xM > west - 2 && center.xM < west + houseW + 2 && center.yM > south - 2 && center.yM < south + houseD + 2
    if (isByHouse) continue
    add('tree', { form: 'round', center, radiusM: half(1 + random.next()), topM: half(4 + 5 * random.next()) })
  }
  return {
    outline: [
      { xM: 0, yM: 0 },
      { xM: widthM, yM: 0 },
      { xM: widthM, yM: depthM },
      { xM: 0, yM: depthM },
    ],
    obstacles,
    hazards:
      random.next() < 0.25
        ? [
            {
              id: 'hazard 1',
              kind: 'sprinkler',
              name: '',
              at: { xM: half(gauge.xM + 4), yM: half(gauge.yM + 2) },
              reachM: 4,
            },
          ]
        : [],
    slopeDeg: Math.round(8 * random.next()),
    gauge: { at: gauge, rimM: openness > 0.5 ? 0.6 : 1.5, hasWindShield: false },
  }
}

function half(metres: number): number {
  return Math.round(metres * 2) / 2
}
