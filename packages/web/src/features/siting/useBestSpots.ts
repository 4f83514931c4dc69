import type { BestSpots, YardPlan } from '@gaugewright/science'
import { useEffect, useRef, useState } from 'react'
import type { BestSpotsJob, BestSpotsTold } from '../../workers/bestSpots.worker.ts'

export type Search =
  | { state: 'none' }
  | { state: 'working'; share: number }
  | { state: 'found'; found: BestSpots; ms: number }

/** Looks for the best spot away from the screen. A plan that changes makes what was found old: it goes. */
export function useBestSpots(plan: YardPlan, rimM: number) {
  const [search, setSearch] = useState<Search>({ state: 'none' })
  const worker = useRef<Worker | null>(null)
  // The gauge itself may move: what was found does not depend on where it stands.
  const basis = JSON.stringify({ ...plan, gauge: null, rimM })
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was found is thrown away when what it rests on changes
  useEffect(() => setSearch({ state: 'none' }), [basis])
  useEffect(() => () => worker.current?.terminate(), [])
  const find = () => {
    worker.current?.terminate()
    const own = new Worker(new URL('../../workers/bestSpots.worker.ts', import.meta.url), { type: 'module' })
    worker.current = own
    setSearch({ state: 'working', share: 0 })
    own.onmessage = ({ data }: MessageEvent<BestSpotsTold>) => {
      if (data.kind === 'progress') setSearch({ state: 'working', share: data.share })
      else setSearch({ state: 'found', found: data.found, ms: data.ms })
    }
    own.postMessage({ plan, ask: { rimM } } satisfies BestSpotsJob)
  }
  return { search, find, clear: () => setSearch({ state: 'none' }) }
}
