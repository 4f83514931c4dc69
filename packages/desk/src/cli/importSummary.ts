/** What an import did, in a few lines. */
import type { FileReport, ImportReport } from '../app/import/importAsk.ts'

export function importSummary(report: ImportReport): string {
  const { network } = report
  const lines = report.files.flatMap((file) => fileLines(file))
  if (report.networkIsNew) {
    lines.unshift(
      `made the network "${network.id}": read at ${network.readingTime}, ${network.timeZone}, ${network.unit === 'in' ? 'inches' : 'millimetres'}`,
    )
  }
  return `${lines.join('\n')}\n`
}

function fileLines(file: FileReport): string[] {
  const parts: string[] = []
  const { gauges, readings } = file
  if (gauges !== null && (readings === null || gauges.added > 0)) {
    parts.push(`${count(gauges.added, 'gauge')} added`)
    if (readings === null) parts.push(`${gauges.changed} changed, ${gauges.same} the same`)
  }
  if (readings !== null) {
    parts.push(`${count(readings.stored, 'reading')} stored`)
    if (readings.superseding > 0) parts.push(`${readings.superseding} of them correcting earlier ones`)
    if (readings.already > 0) parts.push(`${readings.already} there already`)
  }
  for (const [what, number] of Object.entries(file.passedOver)) parts.push(`${number} passed over: ${what}`)
  if (file.refused !== null)
    parts.push(`${count(file.refused.rows, 'row')} refused, with reasons in ${file.refused.file}`)
  return parts.length === 0 ? [] : [`${file.path}: ${parts.join('; ')}`]
}

function count(number: number, what: string): string {
  return `${number} ${what}${number === 1 ? '' : 's'}`
}
