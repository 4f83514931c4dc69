/** What the list of gauges shows. Pure. */
import type { NetworkHabitsAnswer } from '@gaugewright/contract'

export type GaugeEntry = NetworkHabitsAnswer['gauges'][number]
export const gaugeShows = ['habits', 'all'] as const
export type GaugeShow = (typeof gaugeShows)[number]

/** By name, code, area or observer, without regard to case or accents. */
export function shownGauges(gauges: readonly GaugeEntry[], show: GaugeShow, search: string): GaugeEntry[] {
  const wanted = plain(search)
  return gauges.filter((gauge) => {
    if (show === 'habits' && gauge.habits.length === 0) return false
    if (wanted === '') return true
    return [gauge.name, gauge.code, gauge.area ?? '', gauge.observerName ?? ''].some((text) =>
      plain(text).includes(wanted),
    )
  })
}

/** The gauge before or after the chosen one; the first where none is chosen, null at the ends. */
export function gaugeBeside(gauges: readonly GaugeEntry[], code: string | null, step: -1 | 1): GaugeEntry | null {
  const at = code === null ? -1 : gauges.findIndex((gauge) => gauge.code === code)
  if (at < 0) return gauges[0] ?? null
  return gauges[at + step] ?? null
}

function plain(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase()
    .trim()
}
