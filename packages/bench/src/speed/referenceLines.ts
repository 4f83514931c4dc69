/** The comparison with other programs as lines of the speed bench. */
import { readFileSync } from 'node:fs'
import type { ReferenceFiles } from './referenceFiles.ts'
import type { SpeedLine } from './speedLine.ts'
import type { Turns } from './takeTurns.ts'
import { inSeconds, median, wordTimings } from './timings.ts'

/** Of what was timed on a part of the gauges: on how many. */
export type LeftOut = Readonly<Record<string, number>>

/** What was timed, in the order of the table; what was not is left out. */
export function timedLines(turns: Turns, files: ReferenceFiles, leftOut: LeftOut): SpeedLine[] {
  const { gaugeCount, dayCount, reportCount } = files
  const findings = `findings for ${gaugeCount} gauges, files to findings`
  const part = (name: string): string => `leaving out ${leftOut[name]} of ${reportCount} gauges one by one`
  const timed: Record<string, string> = {
    morning: `${findings} (${dayCount} days known)`,
    alone: `${findings} (that morning known)`,
    ourKriging: `our plain kriging at ${gaugeCount} points, 16 neighbours`,
    ourKrigingWhole: 'the same, files to estimates',
    gstat: `gstat: plain kriging at ${gaugeCount} points, 16 neighbours`,
    gstatWhole: 'the same, files to estimates',
    gstatLeft: `gstat: kriging from 16 neighbours, ${part('gstatLeft')}`,
    weights: `scikit-learn: distance weights of 16 neighbours, each of ${reportCount} gauges left out`,
    process: `scikit-learn: Gaussian process of 16 neighbours, ${part('process')}`,
  }
  return Object.entries(timed).flatMap(([name, what]) => {
    const timings = turns.timings[name]
    if (timings === undefined) return []
    const isPart = (leftOut[name] ?? reportCount) < reportCount
    const all = isPart ? `; ${inSeconds(secondsForAll(turns, name, files, leftOut))} s of processor for all` : ''
    return [{ what: `${what}; median of ${timings.length}`, figure: wordTimings(timings) + all, aim: '' }]
  })
}

/** Our findings against gstat, both ways it may be read, and whether plain kriging gives the same estimates. */
export function comparisons(turns: Turns, files: ReferenceFiles, leftOut: LeftOut): SpeedLine[] {
  const { morning, alone, gstat, gstatLeft, gstatWhole } = turns.timings
  if (!morning || !alone || !gstat || !gstatWhole) return []
  const seconds = (name: string): number => secondsForAll(turns, name, files, leftOut)
  const ratio = (what: string, ours: string, theirs: string): SpeedLine => {
    const figure = `${(seconds(ours) / seconds(theirs)).toPrecision(2)} x`
    return { what: `processor time of ${what}`, figure, aim: ours === 'morning' ? '1 x' : '' }
  }
  return [
    ...(gstatLeft ? [ratio("our findings against gstat's leaving out each gauge", 'morning', 'gstatLeft')] : []),
    ratio("our findings against gstat's plain kriging", 'morning', 'gstat'),
    ratio('findings of that morning against plain kriging, both from files', 'alone', 'gstatWhole'),
    ratio("our plain kriging against gstat's", 'ourKriging', 'gstat'),
    {
      what: 'largest difference of both plain krigings, in square roots of mm',
      figure: largestDifference(files.answer('ours.csv'), files.answer('gstat.csv')).toExponential(1),
      aim: '',
    },
  ]
}

/** Median processor time where it is known, for a busy machine does not stretch it; a part stands for all gauges. */
function secondsForAll(turns: Turns, name: string, files: ReferenceFiles, leftOut: LeftOut): number {
  const { reportCount } = files
  const seconds = median((turns.timings[name] ?? []).map(({ seconds, cpuSeconds }) => cpuSeconds ?? seconds))
  return (seconds * reportCount) / (leftOut[name] ?? reportCount)
}

function largestDifference(ours: string, theirs: string): number {
  const [a, b] = [ours, theirs].map((path) => readFileSync(path, 'utf8').trimEnd().split('\n').slice(1))
  if (a!.length !== b!.length) throw new Error(`${a!.length} estimates beside ${b!.length}`)
  return a!.reduce((most, line, k) => Math.max(most, Math.abs(Number.parseFloat(line) - Number.parseFloat(b![k]!))), 0)
}
