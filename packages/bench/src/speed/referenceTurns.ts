/** One turn of each program of the comparison: ours, gstat through R, scikit-learn through Python. */
import { fileURLToPath } from 'node:url'
import { commandPath } from '../ours/runCommand.ts'
import type { ReferenceFiles } from './referenceFiles.ts'
import { type MeasuredRun, runMeasured } from './runMeasured.ts'
import type { Turn } from './takeTurns.ts'
import { ownTiming } from './timings.ts'

const scriptPath = (name: string): string => fileURLToPath(new URL(`./reference/${name}`, import.meta.url))

async function ended(run: Promise<MeasuredRun>): Promise<MeasuredRun> {
  const { failure, ...measured } = await run
  if (failure !== null) throw new Error(failure)
  return { failure, ...measured }
}

/** Findings from files, with the days before and with the morning's reports alone; and plain kriging as gstat's. */
export function ourTurn(files: ReferenceFiles): Turn {
  const check = (readings: string): Promise<MeasuredRun> => {
    const days = ['--from', files.morning, '--to', files.morning]
    const words = ['check', files.gauges, readings, '--unit', 'mm', '--same-morning', ...days]
    return ended(runMeasured(process.execPath, [commandPath, ...words, '--out', files.answer('findings.csv')]))
  }
  return async () => {
    const morning = await check(files.readings)
    const alone = await check(files.lastDay)
    const words = [...process.execArgv, scriptPath('ourKriging.ts'), files.roots, files.answer('ours.csv')]
    const kriging = await ended(runMeasured(process.execPath, words))
    return { morning, alone, ourKriging: ownTiming(kriging, 'plain'), ourKrigingWhole: kriging }
  }
}

/** @param leftOut  gauges left out one by one; all of them only in the first round, for that takes minutes */
export function gstatTurn(files: ReferenceFiles, program: string, leftOut: number): Turn {
  const script = scriptPath('kriging.R')
  return async (round) => {
    const whole = await ended(runMeasured(program, [script, files.roots, files.answer('gstat.csv')]))
    const timings = { gstat: ownTiming(whole, 'plain'), gstatWhole: whole }
    if (round > 0 && leftOut >= files.reportCount) return timings
    const left = await ended(runMeasured(program, [script, files.roots, String(leftOut)]))
    return { ...timings, gstatLeft: ownTiming(left, 'left') }
  }
}

/** @param leftOut  gauges for which a Gaussian process is fitted to the neighbours */
export function sklearnTurn(files: ReferenceFiles, program: string, leftOut: number): Turn {
  return async () => {
    const words = [scriptPath('neighbours.py'), files.roots, String(leftOut)]
    const run = await ended(runMeasured(program, words))
    return { weights: ownTiming(run, 'weights'), process: ownTiming(run, 'process') }
  }
}
