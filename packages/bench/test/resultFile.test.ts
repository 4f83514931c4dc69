import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readResults, writeResults } from '../src/accuracy/resultFile.ts'
import { accuracyParts } from '../src/document/accuracyDocument.ts'
import { drawFigures } from '../src/plots/drawFigures.ts'
import { inventedResult } from './support/inventedResult.ts'

describe('readResults', () => {
  let folder = ''
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'gaugewright-results-'))
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  it('gives back what draws and words the same, not a number and none included', () => {
    const results = [inventedResult('trentino', 30, 60), inventedResult('parana', 45, 30)]
    results[1]!.ours.sameMorning = null
    const [one, other] = [join(folder, 'one.json'), join(folder, 'other.json')]
    writeResults(one, [results[1]!])
    writeResults(other, [results[0]!])
    const read = readResults([one, other])
    expect(drawFigures(read)).toEqual(drawFigures(results))
    expect(accuracyParts(read)).toEqual(accuracyParts(results))
  })

  it('takes the last of a network that stands in several files', () => {
    const [one, other] = [join(folder, 'first.json'), join(folder, 'second.json')]
    writeResults(one, [inventedResult('parana', 30, 30)])
    writeResults(other, [inventedResult('parana', 45, 30)])
    expect(readResults([one, other]).map((result) => result.network.gauges.length)).toEqual([45])
  })

  it('refuses a file that lacks what plots need, by its name', () => {
    const path = join(folder, 'old.json')
    writeFileSync(path, '[{"set":"parana","published":[]}]')
    expect(() => readResults([path])).toThrow(`${path} was not written by this bench`)
  })
})
