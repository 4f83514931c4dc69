import { type RefObject, useEffect, useRef, useState } from 'react'

/** The content width of an element in CSS pixels, followed as it changes; `fallbackPx` until it is measured. */
export function useWidth<Element extends HTMLElement>(fallbackPx: number): [RefObject<Element | null>, number] {
  const element = useRef<Element>(null)
  const [widthPx, setWidthPx] = useState(fallbackPx)
  useEffect(() => {
    if (!element.current) return
    const observer = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) setWidthPx(entry.contentRect.width)
    })
    observer.observe(element.current)
    return () => observer.disconnect()
  }, [])
  return [element, widthPx]
}
