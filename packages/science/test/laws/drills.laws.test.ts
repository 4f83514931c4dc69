/** Drills for any seed: right answers are marked right, each slip is recognised, and what is missed comes more often. */
import { describe, expect, it } from 'vitest'
import { type DrillSkill, drillSkills, type GaugeDrill } from '../../src/drills/drill.ts'
import { apparentUm, makeDrill } from '../../src/drills/makeDrill.ts'
import { markDrill } from '../../src/drills/markDrill.ts'
import { type DrillPast, nextSkill, SITTING_LENGTH } from '../../src/drills/nextSkill.ts'
import { sittingResult } from '../../src/drills/sittingResult.ts'
import { drillFactor } from '../../src/drills/startingOdds.ts'
import { skylineAt } from '../../src/siting/skyline.ts'
import { seededRandom } from '../../src/stats/seededRandom.ts'
import { hailObjectNames } from '../../src/urgent/hailObjects.ts'

const gauge = (skill: GaugeDrill['skill'], unit: 'in' | 'mm', seed: number) =>
  makeDrill(skill, unit, seededRandom(seed)) as GaugeDrill
/** As people write it: two decimals of an inch, one of a millimetre. */
const typed = (um: number, unit: 'in' | 'mm') => (unit === 'in' ? (um / 25_400).toFixed(2) : (um / 1000).toFixed(1))
const seeds = Array.from({ length: 60 }, (_, k) => k * 7919 + 3)
const reasonOf = (drill: GaugeDrill, answer: string) => {
  const mark = markDrill(drill, answer)
  return mark.isRight ? 'right' : mark.reason
}

describe('a gauge drill', () => {
  for (const unit of ['in', 'mm'] as const) {
    it(`${unit}: the bottom of the curve at eye level is right, for every skill`, () => {
      for (const seed of seeds) {
        for (const skill of ['meniscus', 'hundredths', 'eye level', 'overflow'] as const) {
          const drill = gauge(skill, unit, seed)
          expect(reasonOf(drill, typed(drill.trueUm, unit))).toBe('right')
          expect(drill.fillsUm.every((one) => one % drill.stepUm === 0 && one <= drill.tubeUm)).toBe(true)
        }
        expect(reasonOf(gauge('trace', unit, seed), 'T')).toBe('right')
        expect(reasonOf(gauge('dew', unit, seed), '0')).toBe('right')
      }
    })

    it(`${unit}: each slip is told by its own name`, () => {
      for (const seed of seeds) {
        const level = gauge('meniscus', unit, seed)
        expect(
          reasonOf(level, typed(Math.round((level.trueUm + level.climbUm) / level.stepUm) * level.stepUm, unit)),
        ).toBe('top of curve')
        expect(reasonOf(level, typed(level.trueUm - level.stepUm, unit))).toBe('off by one mark')
        expect(reasonOf(level, typed(level.trueUm * 10, unit))).toBe('decimal')
        const small = gauge('hundredths', unit, seed)
        expect(['decimal', 'top of curve']).toContain(reasonOf(small, typed(small.trueUm * 10, unit)))
        const over = gauge('overflow', unit, seed)
        const [first = 0] = over.fillsUm
        expect(reasonOf(over, typed(over.trueUm - first, unit))).toBe('first fill forgotten')
        expect(reasonOf(over, typed(first, unit))).toBe('first fill only')
        const tilted = gauge('eye level', unit, seed)
        const seen = Math.round(apparentUm(tilted, tilted.trueUm) / tilted.stepUm) * tilted.stepUm
        expect(reasonOf(tilted, typed(seen, unit))).toBe('not at eye level')
        expect(reasonOf(gauge('dew', unit, seed), 'T')).toBe('dew as rain')
        expect(reasonOf(gauge('trace', unit, seed), '0')).toBe('trace as zero')
        expect(reasonOf(level, '')).toBe('missing')
        expect(reasonOf(level, 'a lot')).toBe('unreadable')
      }
    })
  }

  it('an overflow of 1.00 + 0.97 + 0.88 in is 2.85 in, told as a sum too', () => {
    const drill: GaugeDrill = { ...gauge('overflow', 'in', 3), fillsUm: [25_400, 24_638, 22_352], trueUm: 72_390 }
    expect(reasonOf(drill, '2.85')).toBe('right')
    expect(reasonOf(drill, '1.00+0.97+0.88')).toBe('right')
    expect(reasonOf(drill, '1.85')).toBe('first fill forgotten')
  })
})

describe('a site drill', () => {
  it('its right place has the lowest worst angle of those that no sprinkler reaches', () => {
    for (const seed of seeds.slice(0, 12)) {
      const drill = makeDrill('site', 'mm', seededRandom(seed))
      if (drill.kind !== 'site') throw new Error('no site')
      const sprinkler = drill.plan.hazards[0]!
      const dry = drill.spots.map((at) => Math.hypot(at.xM - sprinkler.at.xM, at.yM - sprinkler.at.yM) >= 4)
      const angles = drill.spots.map((at) => skylineAt(drill.plan, at, drill.rimM).worstDeg)
      expect(dry[drill.right]).toBe(true)
      for (const [index, angle] of angles.entries()) {
        if (index !== drill.right && dry[index]) expect(angle).toBeGreaterThan(angles[drill.right]! + 5.9 - 90)
      }
      expect(markDrill(drill, String(drill.right + 1)).isRight).toBe(true)
      expect(markDrill(drill, String(((drill.right + 1) % 3) + 1)).isRight).toBe(false)
    }
  })
})

describe('a hail drill', () => {
  it('the longest way across counts, within 2 mm; the shorter side is told', () => {
    let stones = 0
    for (const seed of seeds) {
      const drill = makeDrill('hail size', 'mm', seededRandom(seed))
      if (drill.kind === 'choice') continue
      if (drill.kind !== 'hail') throw new Error('no stone')
      stones++
      expect(markDrill(drill, String(drill.longMm + 2)).isRight).toBe(true)
      if (drill.longMm - drill.shortMm > 4)
        expect(markDrill(drill, String(drill.shortMm))).toMatchObject({ reason: 'shorter side' })
    }
    expect(stones).toBeGreaterThan(20)
  })
})

describe('a hail drill by object', () => {
  it('a golf ball stands for 44 mm and a quarter for 25 (weather-service table); three sizes apart, one of them right', () => {
    const seen = new Map<string, string>()
    for (const seed of seeds) {
      const drill = makeDrill('hail size', 'in', seededRandom(seed * 31))
      if (drill.kind !== 'choice') continue
      expect(new Set(drill.options).size).toBe(3)
      expect(markDrill(drill, drill.right).isRight).toBe(true)
      expect(markDrill(drill, drill.options.find((one) => one !== drill.right)!).isRight).toBe(false)
      seen.set(hailObjectNames[drill.numbers.object!]!, drill.right)
    }
    expect(seen.size).toBeGreaterThan(5)
    if (seen.has('golf ball')) expect(seen.get('golf ball')).toBe('44')
    if (seen.has('quarter')) expect(seen.get('quarter')).toBe('25')
    expect(seen.has('golf ball') || seen.has('quarter')).toBe(true)
  })
})

describe('a sitting', () => {
  const sit = (seed: number, isRight: (skill: DrillSkill, random: () => number) => boolean): DrillPast[] => {
    const random = seededRandom(seed)
    const past: DrillPast[] = []
    while (past.length < SITTING_LENGTH) {
      const skill = nextSkill(past, [], random)
      past.push({ skill, isRight: isRight(skill, random) })
    }
    return past
  }

  it('asks every skill, and none twice in a row', () => {
    for (const seed of seeds) {
      const past = sit(seed, (_, random) => random() < 0.8)
      expect(new Set(past.map(({ skill }) => skill)).size).toBe(drillSkills.length)
      for (let k = 1; k < past.length; k++) expect(past[k]!.skill).not.toBe(past[k - 1]!.skill)
    }
  })

  it('asks somebody who always misses one skill for it more than twice as often as for the others', () => {
    let weak = 0
    let rest = 0
    for (const seed of seeds) {
      for (const { skill } of sit(seed, (skill) => skill !== 'overflow')) {
        if (skill === 'overflow') weak++
        else rest++
      }
    }
    expect(weak / seeds.length).toBeGreaterThan((2 * rest) / seeds.length / (drillSkills.length - 1))
  })

  it('passes at the mark, but never without safety', () => {
    const all = drillSkills.map((skill) => ({ skill, isRight: true }))
    expect(sittingResult(all, 0.9)).toMatchObject({ isPassed: true, rightShare: 1, repeat: [] })
    const unsafe = all.map((one) => ({ ...one, isRight: one.skill !== 'safety' }))
    expect(sittingResult(unsafe, 0.5)).toMatchObject({ isPassed: false, repeat: ['safety'] })
    expect(sittingResult([], 0)).toMatchObject({ isPassed: false, rightShare: 0 })
  })

  it('who misses begins with higher odds of mistakes, who passes with lower; nobody beyond a factor of two', () => {
    expect(drillFactor(0, 0)).toBe(1)
    expect(drillFactor(0, 18)).toBeLessThan(0.85)
    expect(drillFactor(9, 18)).toBeGreaterThan(1.3)
    expect(drillFactor(18, 18)).toBeLessThanOrEqual(2)
    expect(drillFactor(0, 1000)).toBeGreaterThanOrEqual(0.5)
    expect(drillFactor(3, 18)).toBeLessThan(drillFactor(4, 18))
  })
})
