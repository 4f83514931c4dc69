import type { MyRecord } from '@gaugewright/contract'
import { useEffect, useState } from 'react'
import { askMyRecord } from '../../api/my/myQueries.ts'
import { keptGauge } from '../../api/my/phoneStore.ts'

/** The own record as the phone kept it, then as the desk has it. `renewed` counts up when readings were received. */
export function useRecord(code: string, renewed: number): { record: MyRecord | null; keptAtUtc: string | null } {
  const [state, setState] = useState<{ record: MyRecord | null; keptAtUtc: string | null }>({
    record: null,
    keptAtUtc: null,
  })
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew when readings were received
  useEffect(() => {
    let isGone = false
    const load = async () => {
      const kept = await keptGauge(code).catch(() => undefined)
      if (!isGone && kept?.record) setState({ record: kept.record, keptAtUtc: kept.keptAtUtc })
      const record = await askMyRecord(code).catch(() => null)
      if (!isGone && record !== null) setState({ record, keptAtUtc: null })
    }
    void load()
    return () => {
      isGone = true
    }
  }, [code, renewed])
  return state
}
