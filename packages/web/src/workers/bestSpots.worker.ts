/** Finds the best spots of a yard away from the screen, so that dragging stays smooth. */
import { type BestSpots, type BestSpotsAsk, bestSpots, type YardPlan } from '@gaugewright/science'

export interface BestSpotsJob {
  plan: YardPlan
  ask: Omit<BestSpotsAsk, 'onProgress'>
}
export type BestSpotsTold = { kind: 'progress'; share: number } | { kind: 'done'; found: BestSpots; ms: number }

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<BestSpotsJob>) => void) | null
  postMessage: (told: BestSpotsTold) => void
}

scope.onmessage = ({ data }) => {
  const from = performance.now()
  const onProgress = (share: number) => scope.postMessage({ kind: 'progress', share })
  const found = bestSpots(data.plan, { ...data.ask, onProgress })
  scope.postMessage({ kind: 'done', found, ms: performance.now() - from })
}
