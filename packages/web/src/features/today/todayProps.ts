import type { ReactNode } from 'react'
import type { MapAsk } from './mapAsk.ts'

/** What Today needs from the app: the address, the map and the tools of the header. */
export type TodayProps = {
  dayAsked: string
  gaugeId: string | null
  onDay: (day: string) => void
  onGauge: (gaugeId: string) => void
  map: (ask: MapAsk) => ReactNode
  tools: ReactNode
}
