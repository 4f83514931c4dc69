import type { MyGauge } from '@gaugewright/contract'
import { useEffect, useState } from 'react'

/** The time, renewed every half minute and when the page is looked at again; the demo's own where it stands still. */
export function useNow({ standsStill, nowUtc }: Pick<MyGauge, 'standsStill' | 'nowUtc'>): Date {
  const [now, setNow] = useState(() => new Date())
  useEffect(() => {
    const renew = () => setNow(new Date())
    const timer = setInterval(renew, 30_000)
    document.addEventListener('visibilitychange', renew)
    return () => {
      clearInterval(timer)
      document.removeEventListener('visibilitychange', renew)
    }
  }, [])
  return standsStill ? new Date(nowUtc) : now
}
