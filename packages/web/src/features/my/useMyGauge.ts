import type { MyGauge, Problem } from '@gaugewright/contract'
import { useCallback, useEffect, useState } from 'react'
import { askMyGauge } from '../../api/my/myQueries.ts'
import { keptGauge } from '../../api/my/phoneStore.ts'
import { problemFrom } from '../../api/problemError.ts'

export interface GaugeOnPhone {
  gauge: MyGauge | null
  /** True while the desk was not reached: then it is the last state that the phone kept. */
  isStale: boolean
  problem: Problem | null
  refresh: () => void
}

/** The gauge as the phone has it at once, and as the desk has it as soon as it answers. */
export function useMyGauge(code: string | null): GaugeOnPhone {
  const [gauge, setGauge] = useState<MyGauge | null>(null)
  const [problem, setProblem] = useState<Problem | null>(null)
  const [asked, setAsked] = useState(0)
  const refresh = useCallback(() => setAsked((count) => count + 1), [])
  // biome-ignore lint/correctness/useExhaustiveDependencies: `asked` counts the wishes to ask again
  useEffect(() => {
    if (code === null) return
    let isGone = false
    const load = async () => {
      const kept = await keptGauge(code).catch(() => undefined)
      if (!isGone && kept !== undefined) setGauge((now) => now ?? kept.gauge)
      try {
        const fresh = await askMyGauge(code)
        if (isGone) return
        setGauge(fresh)
        setProblem(null)
      } catch (error) {
        if (!isGone) setProblem(problemFrom(error))
      }
    }
    void load()
    return () => {
      isGone = true
    }
  }, [code, asked])
  useEffect(() => {
    // Signing in happens in another page: what was refused before is asked again when this one is looked at.
    const onSight = () => {
      if (document.visibilityState === 'visible' && problem !== null) refresh()
    }
    window.addEventListener('online', refresh)
    document.addEventListener('visibilitychange', onSight)
    return () => {
      window.removeEventListener('online', refresh)
      document.removeEventListener('visibilitychange', onSight)
    }
  }, [refresh, problem])
  return { gauge, isStale: problem !== null, problem, refresh }
}
