import { describe, expect, it } from 'vitest'
import { fillLedger } from '../../../test/support/openDesk.ts'
import { smallNetwork } from '../../../test/support/smallNetwork.ts'
import type { Ledger } from '../../ports/ledger.ts'
import { openMemoryLedger } from '../../store/memory/memoryLedger.ts'
import { type LearnedModelAsk, learnedModel } from './learnedModel.ts'

const small = smallNetwork(60)

async function openSmall(): Promise<{ ledger: Ledger; ask: LearnedModelAsk; versions: string[] }> {
  const ledger = openMemoryLedger()
  await fillLedger(ledger, small)
  const gauges = await ledger.gauges('small')
  const range = await ledger.dayRange('small')
  if (range === null) throw new Error('no readings')
  return { ledger, ask: { networkId: 'small', gauges, range }, versions: [] }
}

/** The same ledger as a desk opened anew sees it: nothing in memory, and what is learned is counted. */
function reopened(ledger: Ledger, versions: string[]): Ledger {
  return new Proxy(ledger, {
    get: (target, name, receiver) => {
      if (name !== 'saveCached') return Reflect.get(target, name, receiver)?.bind?.(target) ?? Reflect.get(target, name)
      return async (network: string, key: string, version: string, body: string) => {
        if (key === 'model') versions.push(version)
        await target.saveCached(network, key, version, body)
      }
    },
  })
}

describe('learnedModel', () => {
  it('is learned once, kept in the ledger, and read from there by the next desk', async () => {
    const { ledger, ask, versions } = await openSmall()
    const desk = reopened(ledger, versions)
    const first = await learnedModel(desk, ask)
    expect(await learnedModel(desk, ask)).toBe(first)
    const second = await learnedModel(reopened(ledger, versions), ask)
    expect(versions).toHaveLength(1)
    expect(second.version).toBe(first.version)
    expect(second.model).toEqual(first.model)
  })

  it('leaves out the newest days, whose mistakes nobody has seen yet', async () => {
    const { ledger, ask } = await openSmall()
    expect((await learnedModel(ledger, ask)).version).toContain('2026-04-02..2026-05-27')
  })

  it('is learned anew for other gauges, for a text that cannot be read, and for another make', async () => {
    const { ledger, ask, versions } = await openSmall()
    await learnedModel(reopened(ledger, versions), ask)
    const moved = ask.gauges.map((gauge, index) => (index === 3 ? { ...gauge, latDeg: gauge.latDeg + 0.1 } : gauge))
    await learnedModel(reopened(ledger, versions), { ...ask, gauges: moved })
    expect(versions).toHaveLength(2)
    const kept = await ledger.cached('small', 'model')
    await ledger.saveCached('small', 'model', kept?.version ?? '', 'not a model')
    await learnedModel(reopened(ledger, versions), { ...ask, gauges: moved })
    expect(versions).toHaveLength(3)
    await ledger.saveCached('small', 'model', versions[2]?.replace('science ', 'science x') ?? '', kept?.body ?? '')
    await learnedModel(reopened(ledger, versions), { ...ask, gauges: moved })
    expect(versions).toHaveLength(4)
  })

  it('a few new readings change nothing; many are learned from in the background, without a wait', async () => {
    const { ledger, ask, versions } = await openSmall()
    const desk = reopened(ledger, versions)
    const first = await learnedModel(desk, ask)
    const readings = ask.range.readings
    await learnedModel(desk, { ...ask, range: { ...ask.range, readings: Math.round(readings * 1.05) } })
    expect(versions).toHaveLength(1)
    const grown = { ...ask, range: { ...ask.range, readings: Math.round(readings * 1.3) } }
    expect(await learnedModel(desk, grown)).toBe(first)
    while (versions.length < 2) await new Promise((resume) => setTimeout(resume, 20))
    await new Promise((resume) => setTimeout(resume, 0))
    expect((await learnedModel(desk, grown)).version).toBe(versions[1])
  })

  it('can be stopped, and is then learned by whoever asks next', async () => {
    const { ledger, ask } = await openSmall()
    const stopped = new AbortController()
    const learning = learnedModel(ledger, { ...ask, signal: stopped.signal })
    stopped.abort(new Error('closing'))
    await expect(learning).rejects.toThrow('closing')
    expect((await learnedModel(ledger, ask)).version).toContain('readings')
  })
})
