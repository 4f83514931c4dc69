/** What falls on one day of a given mood: which fronts, lows, showers and storms come, when and how strong. */
import type { Random } from '../random/random.ts'
import type { HourlyRain } from './hourlyRain.ts'
import type { Orography } from './orography.ts'
import { type Cell, rainCell } from './rainCell.ts'
import { type Front, rainFront } from './rainFront.ts'
import { type Low, rainLow } from './rainLow.ts'
import type { Sites } from './sites.ts'
import type { SynopticState } from './synoptic.ts'

export interface Sky {
  rain: HourlyRain
  sites: Sites
  orography: Orography
  /** Height of the smoothed ground (m), where storms like to start. */
  groundM: (xKm: number, yKm: number) => number
}

const toEast = 0
const degrees = Math.PI / 180

/** @param midnight hour at which the day begins; @param summer 0 in mid-winter to 1 in mid-summer */
export function makeDayWeather(sky: Sky, state: SynopticState, midnight: number, summer: number, random: Random): void {
  if (state === 'westerly') {
    const fronts = random.chance(0.85) ? (random.chance(0.22) ? 2 : 1) : 0
    for (let count = 0; count < fronts; count++) front(sky, midnight + random.between(0, 24), summer, random)
    if (random.chance(0.4)) drizzle(sky, midnight + random.between(-6, 18), random)
  } else if (state === 'low') {
    if (random.chance(0.9)) slowLow(sky, midnight + random.between(-4, 16), random)
    if (random.chance(0.25 * summer)) storms(sky, midnight, random, 1)
  } else if (state === 'showery') {
    showers(sky, midnight, summer, random)
  } else if (state === 'thundery') {
    if (random.chance(0.82)) storms(sky, midnight, random, 1 + random.poisson(2.6))
    if (random.chance(0.12)) squallLine(sky, midnight + random.between(16, 28), random)
  } else if (random.chance(0.07 * summer)) {
    storms(sky, midnight, random, 1)
  } else if (random.chance(0.12 * (1 - summer))) {
    drizzle(sky, midnight + random.between(0, 12), random)
  }
}

function front(sky: Sky, hour: number, summer: number, random: Random): void {
  const speedKmPerH = random.between(27, 55)
  const made: Front = {
    hour,
    direction: toEast + (random.normal() * 28 - 8) * degrees,
    speedKmPerH,
    halfDepthKm: Math.min(150, random.logNormal(72, 0.4)) * (1 - 0.25 * summer),
    alongKm: random.normal() * 60,
    halfLengthKm: random.between(55, 190),
    intensityMmPerH: random.logNormal(3.1, 0.5) * (1 + 0.2 * summer),
    wideSpread: random.between(0.6, 1),
    narrowSpread: random.between(0.3, 0.5) + 0.2 * summer,
    orographicShare: 1,
    limitMmPerH: 11,
  }
  rainFront(sky.rain, sky.sites, sky.orography, made, random)
}

function slowLow(sky: Sky, startHour: number, random: Random): void {
  const low: Low = {
    startHour: Math.round(startHour),
    hours: Math.round(random.between(7, 22)),
    xKm: random.normal() * 55,
    yKm: random.normal() * 45,
    radiusKm: random.between(45, 120),
    direction: random.between(0, 2 * Math.PI),
    turn: random.normal() * 1.2,
    windKmPerH: random.between(8, 25),
    intensityMmPerH: random.logNormal(1.95, 0.5),
    lostMmPerH: 0.15,
    spread: 0.9,
  }
  rainLow(sky.rain, sky.sites, sky.orography, low, random)
}

function drizzle(sky: Sky, startHour: number, random: Random): void {
  const low: Low = {
    startHour: Math.round(startHour),
    hours: Math.round(random.between(3, 9)),
    xKm: random.normal() * 60,
    yKm: random.normal() * 45,
    radiusKm: random.between(30, 90),
    direction: toEast + random.normal() * 40 * degrees,
    turn: 0,
    windKmPerH: random.between(10, 25),
    intensityMmPerH: random.logNormal(0.16, 0.4),
    lostMmPerH: 0.1,
    spread: 0.55,
  }
  rainLow(sky.rain, sky.sites, sky.orography, low, random)
}

function showers(sky: Sky, midnight: number, summer: number, random: Random): void {
  const direction = toEast + (random.normal() * 30 - 15) * degrees
  const speedKmPerH = random.between(18, 42)
  const count = Math.round(random.logNormal(40, 0.7))
  const strength = random.logNormal(5, 0.3)
  for (let index = 0; index < Math.min(count, 130); index++) {
    const start = random.chance(0.65) ? random.between(10, 19) : random.between(0, 24)
    const place = startPlace(sky, random, 0.5)
    const cell: Cell = {
      startHour: midnight + start,
      lifeH: random.between(0.5, 1.8),
      xKm: place.xKm,
      yKm: place.yKm,
      direction: direction + random.normal() * 0.1,
      speedKmPerH: speedKmPerH * random.between(0.85, 1.15),
      radiusKm: random.between(2.2, 5.5),
      peakMmPerH: random.logNormal(strength, 0.5) * (1 + 0.4 * summer),
    }
    rainCell(sky.rain, sky.sites, cell, random)
  }
}

/** Clusters of thunderstorms, mostly born over high ground in the afternoon. */
function storms(sky: Sky, midnight: number, random: Random, clusters: number): void {
  const direction = toEast + (random.normal() * 45 + 15) * degrees
  const speedKmPerH = random.between(10, 32)
  for (let cluster = 0; cluster < clusters; cluster++) {
    const centre = startPlace(sky, random, 0.9)
    const startHour = midnight + 15.5 + random.normal() * 2.3 + (random.chance(0.15) ? 7 : 0)
    const cells = 2 + random.poisson(3.5)
    for (let index = 0; index < cells; index++) {
      const cell: Cell = {
        startHour: startHour + random.between(0, 2.5),
        lifeH: random.between(0.7, 2),
        xKm: centre.xKm + random.normal() * 13,
        yKm: centre.yKm + random.normal() * 13,
        direction: direction + random.normal() * 0.15,
        speedKmPerH: speedKmPerH * random.between(0.8, 1.2),
        radiusKm: random.between(2.4, 6),
        peakMmPerH: Math.min(125, random.logNormal(27, 0.55)),
      }
      rainCell(sky.rain, sky.sites, cell, random)
    }
    const rest: Low = {
      startHour: Math.round(startHour + 1.5),
      hours: 3,
      xKm: centre.xKm + 1.5 * speedKmPerH * Math.cos(direction),
      yKm: centre.yKm + 1.5 * speedKmPerH * Math.sin(direction),
      radiusKm: random.between(12, 26),
      direction,
      turn: 0,
      windKmPerH: speedKmPerH,
      intensityMmPerH: random.logNormal(0.8, 0.5),
      lostMmPerH: 0.15,
      spread: 0.6,
    }
    rainLow(sky.rain, sky.sites, sky.orography, rest, random)
  }
}

function squallLine(sky: Sky, hour: number, random: Random): void {
  const line: Front = {
    hour,
    direction: toEast + random.normal() * 25 * degrees,
    speedKmPerH: random.between(38, 62),
    halfDepthKm: random.between(14, 26),
    alongKm: random.normal() * 40,
    halfLengthKm: random.between(60, 130),
    intensityMmPerH: random.logNormal(11, 0.35),
    wideSpread: 0.6,
    narrowSpread: 0.7,
    orographicShare: 0.3,
    limitMmPerH: 60,
  }
  rainFront(sky.rain, sky.sites, sky.orography, line, random)
}

/** A starting place in or near the basin; with `pull` 1 the highest of three tries, with 0 any place. */
function startPlace(sky: Sky, random: Random, pull: number): { xKm: number; yKm: number } {
  const tries = random.chance(pull) ? 3 : 1
  let best = { xKm: 0, yKm: 0 }
  let bestM = -1
  for (let index = 0; index < tries; index++) {
    const place = { xKm: random.between(-115, 100), yKm: random.between(-78, 78) }
    const heightM = sky.groundM(place.xKm, place.yKm)
    if (heightM > bestM) {
      best = place
      bestM = heightM
    }
  }
  return best
}
