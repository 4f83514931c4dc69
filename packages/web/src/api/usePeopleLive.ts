import { routes } from '@gaugewright/contract'
import { useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import { peopleKey } from './people.ts'

/** While the page is open, whatever changes about people shows at once: the desk says that something has, and is asked. */
export function usePeopleLive(): void {
  const client = useQueryClient()
  useEffect(() => {
    if (typeof EventSource === 'undefined') return
    const source = new EventSource(routes.peopleLive.path)
    let waiting: ReturnType<typeof setTimeout> | undefined
    source.addEventListener('changed', () => {
      // A burst of changes is one question.
      clearTimeout(waiting)
      waiting = setTimeout(() => {
        void client.invalidateQueries({ queryKey: peopleKey })
        void client.invalidateQueries({ queryKey: ['contacts'] })
      }, 150)
    })
    return () => {
      clearTimeout(waiting)
      source.close()
    }
  }, [client])
}
