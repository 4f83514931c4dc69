/** Observers of whom the desk knows a name at a gauge and no more: nobody among people reads that gauge. */
import type { Language } from '@gaugewright/science'
import type { Ports } from '../../ports/ports.ts'

export interface NameAlone {
  name: string
  language: Language
  /** Of the gauges that the name stands at, by code. */
  gauges: { id: string; code: string }[]
}

export async function namesAlone({ access, ledger }: Pick<Ports, 'access' | 'ledger'>): Promise<NameAlone[]> {
  const read = new Set((await access.people()).flatMap(({ gauges }) => gauges))
  const alone = new Map<string, NameAlone>()
  for (const { id: networkId, language } of await ledger.networks()) {
    for (const { id, code, observerName, closedOn } of await ledger.gauges(networkId)) {
      if (observerName === null || closedOn !== null || read.has(id)) continue
      const one = alone.get(observerName) ?? { name: observerName, language, gauges: [] }
      one.gauges.push({ id, code })
      alone.set(observerName, one)
    }
  }
  return [...alone.values()]
}
