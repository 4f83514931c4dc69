import { useEffect, useState } from 'react'

/** The time, renewed every half minute and when the page is looked at again. */
export function useNow(): Date {
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
  return now
}
