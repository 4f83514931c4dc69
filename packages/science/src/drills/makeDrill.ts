/** Makes a drill for a skill. The same skill, unit and random numbers make the same drill. */
import type { Unit } from '../reading/reading.ts'
import { hazardDistances } from '../siting/hazards.ts'
import { skylineAt } from '../siting/skyline.ts'
import type { Obstacle, YardPlan, YardPoint } from '../siting/yard.ts'
import { hailObjectNames, hailObjects } from '../urgent/hailObjects.ts'
import { choiceBank } from './choiceBank.ts'
import {
  type ChoiceDrill,
  type Drill,
  type DrillSkill,
  type GaugeDrill,
  HAIL_QUESTION,
  TUBE_INNER_MM,
  TUBE_MAGNIFICATION,
} from './drill.ts'

const gauges = { in: { stepUm: 254, tubeUm: 25_400 }, mm: { stepUm: 200, tubeUm: 25_000 } } as const
/** Water in a plastic tube climbs some 2 mm at the wall (capillary length 2.7 mm, [Batchelor1967] 1.9). */
const CLIMB_HEIGHT_MM = 2
/** Of drills about hail, those by object; the others by ruler. */
const OBJECT_SHARE = 0.4
/** Angles at which people look who do not bend down. */
const EYE_DEG = [14, 18, 22, -12]

export function makeDrill(skill: DrillSkill, unit: Unit, random: () => number): Drill {
  switch (skill) {
    case 'hail size':
      return hailDrill(unit, random)
    case 'site':
      return siteDrill(random)
    case 'zero or silence':
    case 'several days':
    case 'safety':
      return choiceDrill(skill, random)
    default:
      return gaugeDrill(skill, unit, random)
  }
}

/** Where the surface seems to stand against the scale, for an eye that is not at its level: a depth on the scale. */
export function apparentUm({ eyeDeg }: Pick<GaugeDrill, 'eyeDeg'>, levelUm: number): number {
  const shiftMm = (TUBE_INNER_MM / 2) * Math.tan((eyeDeg * Math.PI) / 180)
  return levelUm + (shiftMm / TUBE_MAGNIFICATION) * 1000
}

function gaugeDrill(skill: GaugeDrill['skill'], unit: Unit, random: () => number): GaugeDrill {
  const { stepUm, tubeUm } = gauges[unit]
  const steps = Math.round(tubeUm / stepUm)
  const between = (low: number, high: number) => (low + Math.floor(random() * (high - low + 1))) * stepUm
  const base = {
    kind: 'gauge' as const,
    skill,
    unit,
    stepUm,
    tubeUm,
    climbUm: Math.round((CLIMB_HEIGHT_MM / TUBE_MAGNIFICATION) * 1000),
    eyeDeg: 0,
    drops: 'none' as const,
    isTrace: false,
  }
  if (skill === 'trace') return { ...base, fillsUm: [0], drops: 'trace', trueUm: 0, isTrace: true }
  if (skill === 'dew') return { ...base, fillsUm: [0], drops: 'dew', trueUm: 0 }
  if (skill === 'overflow') {
    const full = 1 + Math.floor(random() * 2)
    const more = Array.from({ length: full }, () => between(Math.round(steps * 0.3), steps - 2))
    const fillsUm = [tubeUm, ...more]
    return { ...base, fillsUm, trueUm: fillsUm.reduce((sum, one) => sum + one, 0) }
  }
  const levelUm =
    skill === 'hundredths'
      ? between(1, 9)
      : skill === 'eye level'
        ? between(Math.round(steps * 0.3), Math.round(steps * 0.6))
        : between(Math.round(steps * 0.12), Math.round(steps * 0.85))
  const eyeDeg = skill === 'eye level' ? EYE_DEG[Math.floor(random() * EYE_DEG.length)]! : 0
  return { ...base, fillsUm: [levelUm], trueUm: levelUm, eyeDeg }
}

function choiceDrill(skill: Exclude<ChoiceDrill['skill'], 'hail size'>, random: () => number): ChoiceDrill {
  const own = choiceBank.filter((one) => one.skill === skill)
  const { question, options, right, numbers } = own[Math.floor(random() * own.length)]!
  return { kind: 'choice', skill, question, right, options: shuffled(options, random), numbers: numbers(random) }
}

function hailDrill(unit: Unit, random: () => number): Drill {
  if (random() < OBJECT_SHARE) return hailObjectDrill(random)
  const longMm = Math.round(10 + 45 * random())
  return {
    kind: 'hail',
    skill: 'hail size',
    longMm,
    shortMm: Math.round(longMm * (0.62 + 0.2 * random())),
    turnDeg: Math.round(25 + 40 * random()),
    unit,
  }
}

/** Three sizes, the right one and two others of the table, apart enough not to be mistaken for each other. */
function hailObjectDrill(random: () => number): ChoiceDrill {
  const from = hailObjects.slice(2, 12)
  const at = Math.floor(random() * from.length)
  const mm = Math.round(from[at]!.diameterMm)
  const others = from.map(({ diameterMm }) => Math.round(diameterMm)).filter((one) => Math.abs(one - mm) >= 6)
  const first = Math.floor(random() * others.length)
  const options = [mm, others[first]!, others[(first + 1) % others.length]!].map(String)
  const numbers = { object: hailObjectNames.indexOf(from[at]!.name) }
  return {
    kind: 'choice',
    skill: 'hail size',
    question: HAIL_QUESTION,
    options: shuffled(options, random),
    right: String(mm),
    numbers,
  }
}

/** A yard with three places that differ plainly: the best is at least six degrees lower than the others. */
function siteDrill(random: () => number): Drill {
  for (;;) {
    const plan = smallYard(random)
    const spots = Array.from(
      { length: 3 },
      (): YardPoint => ({ xM: half(2 + 16 * random()), yM: half(2 + 14 * random()) }),
    )
    const isApart = spots.every((one, at) =>
      spots.every((other, k) => k === at || Math.hypot(one.xM - other.xM, one.yM - other.yM) > 3.5),
    )
    const rimM = 0.6
    const scores = spots.map((at) => {
      const line = skylineAt(plan, at, rimM)
      const isIn = line.obstacles.some(({ nearestM }) => nearestM < 0.8)
      const isWet = hazardDistances(plan, at).some(({ distanceM, neededM }) => distanceM < neededM)
      return isIn ? Number.NaN : line.worstDeg + (isWet ? 90 : 0)
    })
    if (!isApart || scores.some(Number.isNaN)) continue
    const right = scores.indexOf(Math.min(...scores))
    const others = scores.filter((_, at) => at !== right)
    if (scores[right]! < 40 && Math.min(...others) - scores[right]! >= 6)
      return { kind: 'site', skill: 'site', plan, spots, rimM, right }
  }
}

function smallYard(random: () => number): YardPlan {
  const houseX = half(2 + 8 * random())
  const ring = [
    { xM: houseX, yM: 13 },
    { xM: houseX + 8, yM: 13 },
    { xM: houseX + 8, yM: 18 },
    { xM: houseX, yM: 18 },
  ]
  const obstacles: Obstacle[] = [
    { id: 'house', kind: 'house', name: '', shape: { form: 'ring', ring, topM: 5 } },
    {
      id: 'tree',
      kind: 'tree',
      name: '',
      shape: {
        form: 'round',
        center: { xM: half(2 + 16 * random()), yM: half(2 + 8 * random()) },
        radiusM: 1.5,
        topM: half(5 + 4 * random()),
      },
    },
    {
      id: 'fence',
      kind: 'fence',
      name: '',
      shape: {
        form: 'line',
        points: [
          { xM: 0, yM: 0 },
          { xM: 20, yM: 0 },
        ],
        topM: 1.8,
      },
    },
  ]
  const outline = [
    { xM: 0, yM: 0 },
    { xM: 20, yM: 0 },
    { xM: 20, yM: 20 },
    { xM: 0, yM: 20 },
  ]
  const at = { xM: half(3 + 14 * random()), yM: half(3 + 9 * random()) }
  return {
    outline,
    obstacles,
    hazards: [{ id: 'sprinkler', kind: 'sprinkler', name: '', at, reachM: 3 }],
    slopeDeg: 0,
    gauge: null,
  }
}

function half(metres: number): number {
  return Math.round(metres * 2) / 2
}

function shuffled<T>(all: readonly T[], random: () => number): T[] {
  const mixed = [...all]
  for (let at = mixed.length - 1; at > 0; at--) {
    const other = Math.floor(random() * (at + 1))
    ;[mixed[at], mixed[other]] = [mixed[other]!, mixed[at]!]
  }
  return mixed
}
