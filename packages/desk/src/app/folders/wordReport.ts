/** The report that is put beside a file once it was taken or refused: what happened, and what to do. */
import type { Problem } from '@gaugewright/contract'
import type { Delivery } from '../../ports/deliveries.ts'
import type { FileReport } from '../import/importAsk.ts'

export function wordTaken(name: string, reports: readonly FileReport[]): string {
  const lines = [`${name}: taken.`]
  for (const { gauges, readings, passedOver } of reports) {
    if (gauges !== null && (readings === null || gauges.added > 0)) {
      lines.push(`gauges: ${gauges.added} added, ${gauges.changed} changed, ${gauges.same} the same`)
    }
    if (readings !== null) {
      const { stored, superseding, already } = readings
      lines.push(`readings: ${stored} stored, ${superseding} of them correcting earlier ones, ${already} there already`)
    }
    for (const [what, count] of Object.entries(passedOver)) lines.push(`${count} passed over: ${what}`)
  }
  return `${lines.join('\n')}\n`
}

export function cameBefore(name: string, before: Delivery, first: string): string {
  return `${name}: came before as ${before.name}, ${before.receivedAtUtc}; nothing was added.\n${first}`
}

export function wordRefusal(name: string, { code, seen, advice }: Problem): string {
  return `${name}: refused; nothing of it was taken.\n${code}: ${seen}\n${advice}\nMend it, and put it into the folder again.\n`
}
