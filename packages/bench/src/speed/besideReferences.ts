/**
 * Our findings for a large network beside other programs on the same gauges, by turns in the same run: gstat's ordinary
 * kriging through R, and scikit-learn. Figures are medians over the rounds.
 */
import { type FoundInterpreter, findInterpreter, pythonWithSklearn, rWithGstat } from './findInterpreter.ts'
import { referenceFiles } from './referenceFiles.ts'
import { comparisons, timedLines } from './referenceLines.ts'
import { gstatTurn, ourTurn, sklearnTurn } from './referenceTurns.ts'
import { type SpeedLine, skipped } from './speedLine.ts'
import type { SyntheticNetwork } from './syntheticNetwork.ts'
import { type Turn, takeTurns } from './takeTurns.ts'

export const references = ['gstat', 'sklearn'] as const
export type Reference = (typeof references)[number]

export interface ReferenceAsk {
  which: readonly Reference[]
  rounds: number
  /** gstat leaves out every gauge, once: minutes. */
  isWhole: boolean
}

/** Gauges left out one by one where not all are. */
const leftOutCount = 500
const interpreters = { gstat: rWithGstat, sklearn: pythonWithSklearn }

export async function besideReferences(
  network: SyntheticNetwork,
  workFolder: string,
  ask: ReferenceAsk,
): Promise<SpeedLine[]> {
  const found: Partial<Record<Reference, FoundInterpreter>> = {}
  for (const name of ask.which) found[name] = await findInterpreter(interpreters[name])
  const missing = ask.which.flatMap((name) => {
    const answer = found[name]
    return answer !== undefined && 'missing' in answer ? [skipped(name, answer.missing)] : []
  })
  if (missing.length === ask.which.length) return missing
  const files = referenceFiles(network, workFolder)
  const programs: Record<string, Turn> = { ours: ourTurn(files) }
  const { gstat, sklearn } = found
  const leftOut = { gstatLeft: ask.isWhole ? files.reportCount : leftOutCount, process: leftOutCount }
  if (gstat && 'program' in gstat) programs[gstat.version] = gstatTurn(files, gstat.program, leftOut.gstatLeft)
  if (sklearn && 'program' in sklearn) programs[sklearn.version] = sklearnTurn(files, sklearn.program, leftOut.process)
  const turns = await takeTurns(programs, ask.rounds)
  const versions = Object.keys(programs).slice(1).join(', ')
  const failed = Object.entries(turns.failures).map(([name, why]) => skipped(name, why))
  return [
    { what: 'beside', figure: versions, aim: '' },
    ...timedLines(turns, files, leftOut),
    ...comparisons(turns, files, leftOut),
    ...failed,
    ...missing,
  ]
}
