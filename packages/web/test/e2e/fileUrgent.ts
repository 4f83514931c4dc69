/** Files urgent reports at a running desk, as an observer's phone does. */
import { randomUUID } from 'node:crypto'
import type { FileUrgentInput } from '@gaugewright/contract'

/** Hail seen so many seconds ago at a place of the invented basin. @returns its id and when the desk had answered */
export async function fileHail(
  url: string,
  diameterMm: number,
  change: Partial<FileUrgentInput> = {},
  secondsAgo = 40,
): Promise<{ id: string; filedAtMs: number }> {
  const report: FileUrgentInput = {
    id: randomUUID(),
    where: { kind: 'place', ...(await placeIn(url)), name: 'Upper meadow' },
    seenAtUtc: new Date(Date.now() - 1000 * secondsAgo).toISOString(),
    by: 'Wren Alder',
    seen: { kind: 'hail', largest: { diameterMm, by: 'ruler' }, groundCover: 'covered', damage: ['vehicles'] },
    ...change,
  }
  const answer = await fetch(`${url}/api/urgent`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(report),
  })
  if (!answer.ok) throw new Error(`${answer.status}: ${await answer.text()}`)
  return { id: report.id, filedAtMs: Date.now() }
}

/** A place within the network: that of the first gauge of the roll. */
export async function placeIn(url: string): Promise<{ latDeg: number; lonDeg: number }> {
  const day = (await (await fetch(`${url}/api/days/latest`)).json()) as { roll: { latDeg: number; lonDeg: number }[] }
  const { latDeg, lonDeg } = day.roll[0] ?? { latDeg: 0, lonDeg: 0 }
  return { latDeg, lonDeg }
}
