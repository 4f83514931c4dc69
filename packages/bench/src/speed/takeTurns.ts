/** Several programs timed in turns, so that whatever else the machine does meets all of them alike. */
import type { Timing } from './timings.ts'

/** One program: each turn gives a time for each of the things it is timed at, under their names. */
export type Turn = (round: number) => Promise<Record<string, Timing>>

export interface Turns {
  /** By name of what was timed, one for each round. */
  timings: Record<string, Timing[]>
  /** By program: why it dropped out. */
  failures: Record<string, string>
}

/** @param programs  by name; one that fails drops out, the others go on */
export async function takeTurns(programs: Record<string, Turn>, rounds: number): Promise<Turns> {
  const turns: Turns = { timings: {}, failures: {} }
  for (let round = 0; round < rounds; round++) {
    for (const [name, turn] of Object.entries(programs)) {
      if (name in turns.failures) continue
      try {
        for (const [timed, timing] of Object.entries(await turn(round)))
          turns.timings[timed] = [...(turns.timings[timed] ?? []), timing]
      } catch (error) {
        turns.failures[name] = error instanceof Error ? error.message : String(error)
      }
    }
  }
  return turns
}
