/** What Today wants the map to show; the app puts the map itself in, since features do not know each other. */
import type { DayField, RollRow, WhatIf } from '@gaugewright/contract'

export const mapMeasures = ['amount', 'uncertainty', 'change', 'gauges'] as const
export type MapMeasure = (typeof mapMeasures)[number]

export type MapAsk = {
  day: string
  roll: readonly RollRow[]
  doubtful: ReadonlySet<string>
  field: DayField | null
  change: WhatIf | null
  chosenGaugeId: string | null
  hoveredGaugeId: string | null
  neighbours: readonly { gaugeId: string; weight: number }[]
  measure: MapMeasure
  onMeasure: (measure: MapMeasure) => void
  isohyets: boolean
  onIsohyets: (shown: boolean) => void
  onChoose: (gaugeId: string) => void
}
