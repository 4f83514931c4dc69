import {
  type KeyboardEvent,
  type PointerEvent,
  type RefObject,
  useCallback,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react'
import { fitView, keepInSight, type MapFrame, type Size, type View, zoomAbout } from './mapFrame.ts'

type Pointer = { xPx: number; yPx: number }

/** Pan and zoom of the map by mouse, wheel, touch and keys. `onTap` tells a press that did not drag. */
export function useMapView(
  surface: RefObject<HTMLElement | null>,
  frame: MapFrame,
  onTap: (xPx: number, yPx: number) => void,
  onHover: (xPx: number, yPx: number) => void,
) {
  const [size, setSize] = useState<Size>({ widthPx: 600, heightPx: 400 })
  const [moved, setMoved] = useState<View | null>(null)
  const fitted = useMemo(() => fitView(frame, size), [frame, size])
  const view = moved ?? fitted
  const latest = useRef({ view, fitted, frame, size })
  latest.current = { view, fitted, frame, size }
  const pointers = useRef(new Map<number, Pointer>())
  const travelledPx = useRef(0)

  const change = useCallback((next: (view: View, fitted: View) => View) => {
    const { fitted: fit, frame: onFrame, size: inSize } = latest.current
    setMoved((now) => keepInSight(next(now ?? fit, fit), onFrame, inSize))
  }, [])
  const zoom = useCallback(
    (factor: number, xPx?: number, yPx?: number) =>
      change((now, fit) => {
        const { widthPx, heightPx } = latest.current.size
        return zoomAbout(now, factor, xPx ?? widthPx / 2, yPx ?? heightPx / 2, fit)
      }),
    [change],
  )
  const pan = useCallback(
    (dx: number, dy: number) => change((now) => ({ ...now, xPx: now.xPx + dx, yPx: now.yPx + dy })),
    [change],
  )
  const showAll = useCallback(() => setMoved(null), [])
  /** Bring a world point into the middle, unless all is shown or it is well in sight already. */
  const reveal = useCallback((worldX: number, worldY: number) => {
    const { size: inSize, frame: onFrame } = latest.current
    const marginPx = 24
    setMoved((now) => {
      if (now === null) return null
      const x = worldX * now.scale + now.xPx
      const y = worldY * now.scale + now.yPx
      if (x > marginPx && y > marginPx && x < inSize.widthPx - marginPx && y < inSize.heightPx - marginPx) return now
      const middle = {
        ...now,
        xPx: inSize.widthPx / 2 - worldX * now.scale,
        yPx: inSize.heightPx / 2 - worldY * now.scale,
      }
      return keepInSight(middle, onFrame, inSize)
    })
  }, [])

  useEffect(() => {
    const element = surface.current
    if (!element) return
    const observer = new ResizeObserver(([entry]) => {
      if (!entry || entry.contentRect.width === 0) return
      const next = { widthPx: entry.contentRect.width, heightPx: entry.contentRect.height }
      const { size: before } = latest.current
      // What was in the middle stays in the middle.
      setMoved(
        (now) =>
          now && {
            ...now,
            xPx: now.xPx + (next.widthPx - before.widthPx) / 2,
            yPx: now.yPx + (next.heightPx - before.heightPx) / 2,
          },
      )
      setSize(next)
    })
    observer.observe(element)
    const onWheel = (event: WheelEvent) => {
      event.preventDefault()
      const box = element.getBoundingClientRect()
      const lines = event.deltaMode === 1 ? 16 : 1
      zoom(
        Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0018)),
        event.clientX - box.left,
        event.clientY - box.top,
      )
    }
    element.addEventListener('wheel', onWheel, { passive: false })
    return () => {
      observer.disconnect()
      element.removeEventListener('wheel', onWheel)
    }
  }, [surface, zoom])

  const place = (event: PointerEvent): Pointer => {
    const box = surface.current!.getBoundingClientRect()
    return { xPx: event.clientX - box.left, yPx: event.clientY - box.top }
  }
  const handlers = {
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0) return
      surface.current?.setPointerCapture(event.pointerId)
      pointers.current.set(event.pointerId, place(event))
      if (pointers.current.size === 1) travelledPx.current = 0
    },
    onPointerMove: (event: PointerEvent) => {
      const now = place(event)
      const before = pointers.current.get(event.pointerId)
      if (!before) {
        if (event.pointerType === 'mouse') onHover(now.xPx, now.yPx)
        return
      }
      const other = [...pointers.current].find(([id]) => id !== event.pointerId)?.[1]
      pointers.current.set(event.pointerId, now)
      travelledPx.current += Math.hypot(now.xPx - before.xPx, now.yPx - before.yPx)
      if (other) {
        const spread = Math.hypot(now.xPx - other.xPx, now.yPx - other.yPx)
        const spreadBefore = Math.hypot(before.xPx - other.xPx, before.yPx - other.yPx)
        if (spreadBefore > 0) zoom(spread / spreadBefore, (now.xPx + other.xPx) / 2, (now.yPx + other.yPx) / 2)
        pan((now.xPx - before.xPx) / 2, (now.yPx - before.yPx) / 2)
      } else if (travelledPx.current > 4) pan(now.xPx - before.xPx, now.yPx - before.yPx)
    },
    onPointerUp: (event: PointerEvent) => {
      const was = pointers.current.get(event.pointerId)
      pointers.current.delete(event.pointerId)
      if (was && pointers.current.size === 0 && travelledPx.current <= 6) onTap(was.xPx, was.yPx)
    },
    onPointerCancel: (event: PointerEvent) => pointers.current.delete(event.pointerId),
    onPointerLeave: () => onHover(-1e4, -1e4),
  }
  return { view, size, zoom, pan, showAll, reveal, handlers }
}

const steps: Record<string, readonly [number, number]> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** The pan or zoom that a key asks for while the map has focus; false when the key is not the map's. */
export function moveByKey(
  event: KeyboardEvent,
  acts: { pan: (dx: number, dy: number) => void; zoom: (factor: number) => void; showAll: () => void },
): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false
  const step = steps[event.key]
  if (step && !event.shiftKey) acts.pan(step[0] * 60, step[1] * 60)
  else if (event.key === '+' || event.key === '=') acts.zoom(1.4)
  else if (event.key === '-' || event.key === '_') acts.zoom(1 / 1.4)
  else if (event.key === '0') acts.showAll()
  else return false
  return true
}
