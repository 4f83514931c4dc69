import { useEffect, useState } from 'react'
import type { PageView } from './screenScale.ts'

/** How the page is shown now; changes when it is zoomed, pinched or moved to another screen. */
export function usePageView(): PageView {
  const [view, setView] = useState(readView)
  useEffect(() => {
    const follow = () => setView(readView())
    addEventListener('resize', follow)
    visualViewport?.addEventListener('resize', follow)
    return () => {
      removeEventListener('resize', follow)
      visualViewport?.removeEventListener('resize', follow)
    }
  }, [])
  return view
}

function readView(): PageView {
  return { devicePixelRatio, pinchScale: visualViewport?.scale ?? 1 }
}
