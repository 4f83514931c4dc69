import { useQuery } from '@tanstack/react-query'
import { useEffect } from 'react'
import { urgentQuery } from '../api/urgent.ts'
import { useUrgentLineOpen } from '../api/useUrgentLine.ts'
import { playSound, soundState, wakeSound } from '../hooks/urgentSound.ts'
import { useTitleBadge } from '../hooks/useTitleBadge.ts'

/** On every screen: the live line of urgent reports, the number of new ones in the title, and the sound where it is on. */
export function UrgentWatch() {
  const { data } = useQuery(urgentQuery)
  useUrgentLineOpen(data !== undefined, playSound)
  useTitleBadge(data?.newCount ?? 0)
  useEffect(() => {
    const wake = (): void => {
      if (soundState() === 'waits') void wakeSound()
    }
    window.addEventListener('pointerdown', wake)
    window.addEventListener('keydown', wake)
    return () => {
      window.removeEventListener('pointerdown', wake)
      window.removeEventListener('keydown', wake)
    }
  }, [])
  return null
}
