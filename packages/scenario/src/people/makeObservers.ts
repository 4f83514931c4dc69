/** Observers with habits, drawn so that most are careful and a few are not. Shares are reasoned, not fitted. */
import { familyNames, givenNames } from '../names/personNames.ts'
import type { Random } from '../random/random.ts'
import type { AmountStyle, Observer, Service } from './observer.ts'

const MM_SHARE = 0.05
const MEAN_CARELESSNESS_SPREAD = 0.75

export function makeObservers(count: number, random: Random): Observer[] {
  const names = new Set<string>()
  return Array.from({ length: count }, () => {
    let name = ''
    while (name === '' || (names.has(name) && names.size < givenNames.length * familyNames.length)) {
      name = `${random.pick(givenNames)} ${random.pick(familyNames)}`
    }
    names.add(name)
    return makeObserver(name, random)
  })
}

function makeObserver(name: string, random: Random): Observer {
  const unit = random.chance(MM_SHARE) ? 'mm' : 'in'
  const isWeekendMisser = random.chance(0.13)
  const isForgetful = random.chance(0.14)
  const hidesTotals = random.chance(0.2)
  return {
    name,
    unit,
    readsAtMin: Math.round(usualMinute(random)),
    spreadMin: random.logNormal(10, 0.5),
    weekendLaterMin: random.chance(0.4) ? random.between(15, 75) : 0,
    style: makeStyle(unit, random),
    roundsTo: unit === 'mm' ? 1 : [1, 5, 10][random.weighted([0.86, 0.09, 0.05])]!,
    missesLight: random.chance(0.14) ? random.between(0.3, 0.8) : 0.02,
    reportsTrace: random.chance(0.72),
    forgets: isForgetful ? random.between(0.06, 0.2) : random.logNormal(0.015, 0.6),
    forgetsWeekend: isWeekendMisser ? random.between(0.25, 0.9) : 0,
    keepsBack: random.logNormal(0.012, 0.7),
    declaresTotal: hidesTotals ? 0.2 : 0.74,
    sendsTotalAsDay: hidesTotals ? 0.4 : 0.05,
    fillsWithZeros: hidesTotals ? 0.25 : 0.03,
    carelessness: random.logNormal(Math.exp(-(MEAN_CARELESSNESS_SPREAD ** 2) / 2), MEAN_CARELESSNESS_SPREAD),
    sendsAfterMin: random.logNormal(9, 0.7),
    sendsLate: random.chance(0.08) ? random.between(0.3, 0.8) : 0.015,
  }
}

/** Most read between half past six and half past seven; some late, a few early. */
function usualMinute(random: Random): number {
  const kind = random.weighted([0.7, 0.2, 0.06, 0.04])
  if (kind === 0) return 420 + 14 * random.normal()
  if (kind === 1) return random.between(450, 520)
  return kind === 2 ? random.between(325, 390) : random.between(520, 575)
}

function makeStyle(unit: 'in' | 'mm', random: Random): AmountStyle {
  const leadingZero = unit === 'mm' || random.chance(0.72)
  const trailingZeros = unit === 'in' && random.chance(0.85)
  const zeros = unit === 'mm' ? ['0', '0.0'] : leadingZero ? ['0.00', '0.00', '0'] : ['.00', '0', '0.00']
  return { leadingZero, trailingZeros, zero: random.pick(zeros), trace: random.pick(['T', 'T', 'T', 'tr']) }
}

/**
 * When a gauge was open and when its observer was away.
 * @param firstDay, lastDay  days of the scenario; most gauges were open before, some opened during, a few have closed
 */
export function makeService(firstDay: number, lastDay: number, random: Random): Service {
  const span = lastDay - firstDay
  const isOld = random.chance(0.66)
  const openedOn = isOld
    ? firstDay - Math.round(random.between(60, 14 * 365))
    : firstDay + Math.round(span * random.between(0.02, 0.96) ** 1.3)
  const start = Math.max(openedOn, firstDay)
  const hasClosed = random.chance(0.07) && lastDay - start > 300
  const closedOn = hasClosed ? start + Math.round((lastDay - start) * random.between(0.25, 0.97)) : null
  const end = closedOn ?? lastDay
  const dropouts: Service['dropouts'] = []
  const absences: Service['absences'] = []
  for (let day = start + Math.round(random.exponential(2400)); day < end; day += Math.round(random.exponential(2400))) {
    const length = Math.round(random.between(15, 140))
    if (day + length < lastDay - 20) dropouts.push({ firstDay: day, lastDay: day + length })
    day += length
  }
  for (let day = start + Math.round(random.exponential(210)); day < end; day += Math.round(random.exponential(210))) {
    const length = Math.round(random.between(2, 15))
    if (day + length < lastDay - 6) {
      absences.push({ firstDay: day, lastDay: day + length, isDeclared: random.chance(0.62) })
    }
    day += length
  }
  return { openedOn, closedOn, dropouts, absences }
}
