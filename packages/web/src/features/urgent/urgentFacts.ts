/** The facts of a report, in the order in which a forecaster asks for them. Pure. */
import type { UrgentItem, WireStorm } from '@gaugewright/contract'
import { fill } from '../../words/fill.ts'
import type { WordsInUse } from '../../words/WordsContext.tsx'
import { oddsText, sizeText, speedText, waterText } from './urgentView.ts'

type In = Pick<WordsInUse, 'words' | 'format'>
export type UrgentFact = { name: string; value: string }

export function factsOf(item: UrgentItem, storm: WireStorm | null, own: In): UrgentFact[] {
  const { words, format } = own
  const { report, energyJ, rateMmPerH, severity } = item
  const { seen } = report
  const say = words.urgent
  const facts: UrgentFact[] = []
  const add = (name: string, value: string | null): void => void (value && facts.push({ name, value }))
  const by = report.by === '' ? say.byForgotten : fill(say.bySomebody, { name: report.by })
  add(
    fill(say.seenAt, { time: '' }).trim(),
    [format.instant(report.seenAtUtc), by, goingOn(seen, own)].filter(Boolean).join(', '),
  )
  if (seen.kind === 'hail') {
    const { largest, typical, smallest, shape, groundCover } = seen
    const look = [shape === null ? null : say.shapes[shape], groundCover === null ? null : say.covers[groundCover]]
    add(say.size, [sizeText(largest.diameterMm, own), say.measures[largest.by], ...look].filter(Boolean).join(', '))
    add(say.typical, typical === null ? null : `${sizeText(typical.diameterMm, own)}, ${say.measures[typical.by]}`)
    add(say.smallest, smallest === null ? null : `${sizeText(smallest.diameterMm, own)}, ${say.measures[smallest.by]}`)
  }
  if (seen.kind === 'flooding') add(say.water, waterText(seen, own))
  if (energyJ !== null) {
    const range = fill(say.energyRange, { low: joules(energyJ.low, own), high: joules(energyJ.high, own) })
    add(say.energy, `${range} (${say.energyNote})`)
  }
  if (rateMmPerH !== null) add(say.rate, rateText(rateMmPerH, severity, own))
  add(say.damage, seen.damage.map((kind) => say.damages[kind]).join(', '))
  add(say.began, seen.beganAtUtc === null ? null : format.instant(seen.beganAtUtc))
  add(say.odds, oddsText(item, own))
  add(say.storm, storm === null ? null : stormText(storm, own))
  add(say.remark, report.remark)
  return facts
}

export function stormText({ reportIds, track }: WireStorm, own: In): string {
  const { words, format } = own
  if (track === null) return fill(words.urgent.stormOf, { count: reportIds.length })
  return fill(words.urgent.stormMoves, {
    count: reportIds.length,
    direction: format.compass(track.towardDeg),
    speed: speedText(track.speedKmPerH / 3.6, own),
    low: speedText(track.speedRangeKmPerH.low / 3.6, own),
    high: speedText(track.speedRangeKmPerH.high / 3.6, own),
    degrees: Math.round(track.towardPlusMinusDeg),
  })
}

function goingOn(seen: UrgentItem['report']['seen'], { words }: In): string {
  if (seen.isGoingOn === true) return words.urgent.goingOn
  return seen.isGoingOn === false || seen.endedAtUtc !== null ? words.urgent.ended : ''
}

/** Two digits that tell something. */
function joules(j: number, { format }: In): string {
  return format.number(j, j < 0.995 ? 2 : j < 9.95 ? 1 : 0)
}

function rateText(mmPerH: number, severity: UrgentItem['severity'], { words, format }: In): string {
  const rate = fill(words.urgent.perHour, { amount: format.mm(mmPerH) })
  const { ratio, guidanceMinutes } = severity
  if (ratio === null || guidanceMinutes === null) return rate
  const minutes = Math.round(guidanceMinutes)
  return `${rate}; ${fill(words.urgent.againstGuidance, { percent: `${Math.round(100 * ratio)} %`, minutes })}`
}
