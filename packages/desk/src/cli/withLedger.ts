/** Opens the ledger for one command and closes it whatever happens. */
import type { Ports } from '../ports/ports.ts'
import type { World } from './world.ts'

/** Where a ledger is looked for when none is named. */
export const usualLedger = './gaugewright.db'
export const demoLedger = './gaugewright-demo.db'

export async function withLedger<T>(
  world: World,
  path: string,
  options: { create: boolean },
  work: (ports: Ports) => Promise<T>,
): Promise<T> {
  const ports = await world.openLedger(path, options)
  try {
    return await work(ports)
  } finally {
    await ports.ledger.close()
  }
}
