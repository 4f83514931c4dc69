/** Runs the published checks and ours on the test networks that are here, one after the other. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type InjectedSet, type InjectedSetName, loadInjected } from '../data/loadInjected.ts'
import { type Half, type RunSetAsk, runSet, type SetResult } from './runSet.ts'

export interface MeasureAsk {
  dataFolder: string
  sets: readonly InjectedSetName[]
  halves: Half[]
  parts: RunSetAsk['parts']
  /** Called as each network is done. */
  onResult: (result: SetResult, set: InjectedSet) => void
}

export async function measureNetworks({ dataFolder, sets, halves, parts, onResult }: MeasureAsk): Promise<SetResult[]> {
  const workFolder = mkdtempSync(join(tmpdir(), 'gaugewright-accuracy-'))
  const results: SetResult[] = []
  try {
    for (const name of sets) {
      const set = loadInjected(dataFolder, name)
      const onProgress = (words: string) => {
        if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${name}: ${words} …`)
      }
      const result = await runSet(set, { dataFolder, workFolder, halves, parts, onProgress })
      if (process.stderr.isTTY) process.stderr.write('\r\x1b[K')
      onResult(result, set)
      results.push(result)
    }
  } finally {
    rmSync(workFolder, { recursive: true, force: true })
  }
  return results
}
