/** Worker thread: judges stretches of days. */
import { workerData } from 'node:worker_threads'
import { oddsOfStretch } from './oddsOfStretch.ts'
import type { OddsOfStretch, OddsStretch, OddsWork } from './oddsWork.ts'

export function workOn(stretch: OddsStretch): OddsOfStretch {
  return oddsOfStretch(workerData as OddsWork, stretch)
}
