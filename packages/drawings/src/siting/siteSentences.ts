/** What follows from a plan, in sentences: the class and why, what would better it, rim, hazards, wind, faults. Pure. */
import {
  type Betterment,
  BUILT_UP_RIM_M,
  type ClassReason,
  type HazardSeen,
  OPEN_RIM_M,
  type RimAdvice,
  type WindCaution,
  type YardFault,
  type YardPlan,
} from '@gaugewright/science'
import { type LengthUnit, lengthText } from './length.ts'
import { siteWords, told } from './siteWords.ts'

export interface SiteLanguage {
  language: 'en' | 'es'
  unit: LengthUnit
}

/** An obstacle's own name, else its kind, numbered where there are several of that kind. */
export function obstacleName(plan: YardPlan, id: string, language: 'en' | 'es'): string {
  const words = siteWords[language]
  const item = plan.obstacles.find((one) => one.id === id)
  if (item === undefined) {
    const hazard = plan.hazards.find((one) => one.id === id)
    return hazard === undefined ? '' : hazard.name || words.hazards[hazard.kind]
  }
  if (item.name !== '') return item.name
  const alike = plan.obstacles.filter(({ kind, name }) => kind === item.kind && name === '')
  return alike.length > 1 ? `${words.kinds[item.kind]} ${alike.indexOf(item) + 1}` : words.kinds[item.kind]
}

export function degrees(angle: number, language: 'en' | 'es', places = 0): string {
  return `${new Intl.NumberFormat(language, { maximumFractionDigits: places }).format(angle)}°`
}

export function ratioText(ratio: number, language: 'en' | 'es'): string {
  if (ratio === Number.POSITIVE_INFINITY) return '–'
  return new Intl.NumberFormat(language, { minimumFractionDigits: 1, maximumFractionDigits: 1 }).format(ratio)
}

export function reasonText(reason: ClassReason, plan: YardPlan, { language }: SiteLanguage): string {
  const words = siteWords[language]
  switch (reason.kind) {
    case 'obstacle':
      return told(words.reasonObstacle, {
        name: obstacleName(plan, reason.obstacleId, language),
        ratio: ratioText(reason.ratio, language),
        angle: degrees(reason.elevationDeg, language),
      })
    case 'slope':
      return told(words.reasonSlope, { angle: degrees(reason.slopeDeg, language) })
    case 'even ring':
      return words.reasonRing
    case 'wind shield':
      return words.reasonShield
    case 'no shelter':
      return words.reasonOpen
  }
}

export function bettermentText(one: Betterment, plan: YardPlan, { language, unit }: SiteLanguage): string {
  const words = siteWords[language]
  const name = obstacleName(plan, one.obstacleId, language)
  const length = (metres: number) => lengthText(metres, unit, language)
  const ways = [
    told(words.betterAway, { distance: length(one.awayM), name }),
    ...(one.rimM === null ? [] : [told(words.betterRim, { height: length(one.rimM) })]),
    ...(one.cutToM > 0.5 && mayBeCut(plan, one.obstacleId)
      ? [told(words.betterCut, { name, height: length(one.cutToM) })]
      : []),
  ]
  return told(words.better, { class: String(one.toClass), ways: ways.join(words.or) })
}

/** A house is not cut. */
function mayBeCut(plan: YardPlan, id: string): boolean {
  return ['tree', 'hedge', 'fence', 'pole'].includes(plan.obstacles.find((one) => one.id === id)?.kind ?? '')
}

export function rimText(advice: RimAdvice, { language, unit }: SiteLanguage): string {
  const words = siteWords[language]
  const isOpen = advice.surroundings === 'open'
  const height = lengthText(isOpen ? OPEN_RIM_M : BUILT_UP_RIM_M, unit, language, unit === 'ft' ? 0 : 1)
  return told(isOpen ? words.rimOpen : words.rimBuiltUp, { height })
}

export function hazardText(hazard: HazardSeen, plan: YardPlan, { language, unit }: SiteLanguage): string {
  const words = siteWords[language]
  if (hazard.kind === 'slope') return words.hazardSlope
  const own = obstacleName(plan, hazard.itemId, language)
  const kind = words.hazards[hazard.kind]
  return told(words.hazardNear, {
    name: own === kind ? kind : `${kind} (${own})`,
    distance: lengthText(hazard.distanceM, unit, language),
    needed: lengthText(hazard.neededM, unit, language),
  })
}

export function windText(caution: WindCaution, wind10mMPerS: number, { language, unit }: SiteLanguage): string {
  const words = siteWords[language]
  const share = (one: number) => `${Math.round(one * 100)} %`
  const speed =
    unit === 'ft'
      ? `${Math.round(wind10mMPerS / 0.44704)} ${language === 'es' ? 'millas/h' : 'mph'}`
      : `${new Intl.NumberFormat(language, { maximumFractionDigits: 1 }).format(wind10mMPerS)} m/s`
  const said = told(words.wind, { wind: speed, rain: share(caution.lost.rain), snow: share(caution.lost.snow) })
  return caution.isBeyondRange ? `${said} ${words.windBeyond}` : said
}

export function faultText(fault: YardFault, plan: YardPlan, { language, unit }: SiteLanguage): string {
  const words = siteWords[language]
  const name = fault.itemId === null ? words.yard : obstacleName(plan, fault.itemId, language)
  const number = (value: number) => new Intl.NumberFormat(language, { maximumFractionDigits: 1 }).format(value)
  return told(words.faults[fault.code], {
    name,
    seen: number(fault.seen),
    limit: number(fault.limit),
    seenLength: lengthText(fault.seen, unit, language),
    limitLength: lengthText(fault.limit, unit, language),
  })
}
