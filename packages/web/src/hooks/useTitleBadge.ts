import { useEffect } from 'react'

/** The number of new urgent reports before the title of the page, whatever screen sets the title: `(2) Today · …`. */
export function useTitleBadge(count: number): void {
  useEffect(() => {
    const badge = count > 0 ? `(${count}) ` : ''
    const write = (): void => {
      const bare = document.title.replace(/^\(\d+\) /, '')
      if (document.title !== badge + bare) document.title = badge + bare
    }
    write()
    const title = document.querySelector('title')
    if (title === null) return
    const watcher = new MutationObserver(write)
    watcher.observe(title, { childList: true, characterData: true, subtree: true })
    return () => {
      watcher.disconnect()
      document.title = document.title.replace(/^\(\d+\) /, '')
    }
  }, [count])
}
