/**
 * The last days before this morning, written by hand so that the morning is worth a coordinator's time: a low, a day of
 * showers, a front over the whole basin, and last evening a second front that dies before the east, followed in the
 * dark by one thunderstorm in a corner that the front had left nearly dry.
 */
import type { Random } from '../random/random.ts'
import type { Sky } from './dayWeather.ts'
import type { HourlyRain } from './hourlyRain.ts'
import { rainCell } from './rainCell.ts'
import { rainFront } from './rainFront.ts'
import { rainLow } from './rainLow.ts'
import type { Sites } from './sites.ts'

/** Days whose weather is written here, this morning's calendar day included. */
export const SCRIPTED_DAYS = 5
/** The scripted days are mild, whatever the season: rain, not snow (°C at sea level). */
export const SCRIPTED_MILDEST_C = 14

/** One site in twelve catches this much or more from last evening's front, enough to overfill the measuring tube. mm. */
const WETTEST_TWELFTH_MM = 33
/** Hours before midnight at which that front reaches the basin. */
const FRONT_BEGINS_H = 16

export interface MorningStorm {
  /** Site under the core, and the nearest other site, which catches part of it. */
  coreSite: number
  besideSite: number
}

/** @param midnight hour at which today begins; @param isUsable sites whose gauge is open and read this morning */
export function makeMorningWeather(
  sky: Sky,
  midnight: number,
  isUsable: (site: number) => boolean,
  random: Random,
): MorningStorm {
  const { rain, sites, orography } = sky
  const low = {
    startHour: midnight - 88,
    hours: 13,
    xKm: -20,
    yKm: -45,
    radiusKm: 75,
    direction: 2.2,
    turn: -1,
    windKmPerH: 14,
    intensityMmPerH: 0.9,
    lostMmPerH: 0.15,
    spread: 0.55,
  }
  rainLow(rain, sites, orography, low, random)
  const shared = {
    alongKm: 0,
    halfLengthKm: 320,
    wideSpread: 0.36,
    narrowSpread: 0.16,
    orographicShare: 1,
    limitMmPerH: 16,
  }
  const weak = {
    ...shared,
    hour: midnight - 60,
    direction: -0.5,
    speedKmPerH: 34,
    halfDepthKm: 55,
    intensityMmPerH: 0.7,
  }
  rainFront(rain, sites, orography, weak, random)
  const first = {
    ...shared,
    hour: midnight - 31,
    direction: -0.35,
    speedKmPerH: 32,
    halfDepthKm: 80,
    intensityMmPerH: 2,
  }
  rainFront(rain, sites, orography, first, random)
  const second = {
    ...shared,
    hour: midnight - 5.5,
    direction: 0.12,
    speedKmPerH: 30,
    halfDepthKm: 100,
    intensityMmPerH: 4.7,
    orographicShare: 0.9,
    fade: (xKm: number, yKm: number) => 1 / (1 + Math.exp((xKm - 28 + 0.35 * (yKm + 20)) / 9)),
  }
  rainFront(rain, sites, orography, second, random)
  scaleWettest(rain, midnight - FRONT_BEGINS_H, midnight + 3)
  return nightStorm(sky, midnight, isUsable, random)
}

/** Scale the rain of these hours so that the wettest twelfth of the sites begins at WETTEST_TWELFTH_MM. */
function scaleWettest(rain: HourlyRain, fromHour: number, toHour: number): void {
  const totals = Array.from({ length: rain.siteCount }, (_, site) => rain.between(site, fromHour, toHour))
  const limit = [...totals].sort((a, b) => b - a)[Math.floor(rain.siteCount / 12)] ?? 0
  if (limit === 0) return
  for (let site = 0; site < rain.siteCount; site++) {
    for (let hour = fromHour; hour < toHour; hour++) {
      const at = site * rain.hourCount + hour
      rain.mm[at] = (rain.mm[at]! * WETTEST_TWELFTH_MM) / limit
    }
  }
}

function nightStorm(sky: Sky, midnight: number, isUsable: (site: number) => boolean, random: Random): MorningStorm {
  const { sites } = sky
  const { coreSite, besideSite } = stormSites(sites, isUsable)
  const towardBeside = Math.atan2(
    sites.yM[besideSite]! - sites.yM[coreSite]!,
    sites.xM[besideSite]! - sites.xM[coreSite]!,
  )
  const direction = towardBeside + 0.32
  const speedKmPerH = 10
  const lifeH = 1.6
  const cell = {
    startHour: midnight + 3.2,
    lifeH,
    xKm: sites.xM[coreSite]! / 1000 - 0.42 * speedKmPerH * lifeH * Math.cos(direction),
    yKm: sites.yM[coreSite]! / 1000 - 0.42 * speedKmPerH * lifeH * Math.sin(direction),
    direction,
    speedKmPerH,
    radiusKm: 3,
    peakMmPerH: 100,
  }
  rainCell(sky.rain, sites, cell, random)
  return { coreSite, besideSite }
}

/** In the south-east: the site that lies furthest from all others but one, with that one 4 to 9 km away. */
function stormSites(sites: Sites, isUsable: (site: number) => boolean): MorningStorm {
  let best: MorningStorm = { coreSite: 0, besideSite: Math.min(1, sites.count - 1) }
  let bestScore = Number.NEGATIVE_INFINITY
  for (let site = 0; site < sites.count; site++) {
    if (!isUsable(site)) continue
    const near = nearestTwo(sites, site, isUsable)
    if (near === null) continue
    const inCorner = Math.min(sites.xM[site]! - 42_000, 0) - Math.max(sites.yM[site]! - -12_000, 0)
    const awkward = Math.max(0, 4500 - near.firstM) + Math.max(0, near.firstM - 8000)
    const score = Math.min(near.secondM, 12_000) - 3 * awkward + inCorner
    if (score <= bestScore) continue
    bestScore = score
    best = { coreSite: site, besideSite: near.site }
  }
  return best
}

function nearestTwo(sites: Sites, site: number, isUsable: (site: number) => boolean) {
  let nearest = -1
  let firstM = Number.POSITIVE_INFINITY
  let secondM = Number.POSITIVE_INFINITY
  for (let other = 0; other < sites.count; other++) {
    if (other === site || !isUsable(other)) continue
    const distanceM = Math.hypot(sites.xM[other]! - sites.xM[site]!, sites.yM[other]! - sites.yM[site]!)
    if (distanceM < firstM) {
      secondM = firstM
      firstM = distanceM
      nearest = other
    } else if (distanceM < secondM) secondM = distanceM
  }
  return nearest === -1 ? null : { site: nearest, firstM, secondM }
}
