import { useState } from 'react'

/** A small choice kept on this computer. Storage that refuses is no error: the choice then lasts as long as the page. */
export function useStored(key: string, fallback: string): [string, (value: string) => void] {
  const [value, setValue] = useState(() => {
    try {
      return localStorage.getItem(key) ?? fallback
    } catch {
      return fallback
    }
  })
  const keep = (next: string) => {
    setValue(next)
    try {
      localStorage.setItem(key, next)
    } catch {
      // see above
    }
  }
  return [value, keep]
}
