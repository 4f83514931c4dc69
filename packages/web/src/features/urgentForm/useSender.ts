import type { UrgentForm } from '@gaugewright/contract'
import { useState } from 'react'
import { useStored } from '../../hooks/useStored.ts'
import type { Sender } from './urgentDraft.ts'

export interface PlaceTyped {
  latDeg: number | null
  lonDeg: number | null
  name: string
}

export interface SenderState {
  isElsewhere: boolean
  setElsewhere: (isElsewhere: boolean) => void
  place: PlaceTyped
  setPlace: (place: PlaceTyped) => void
  name: string
  setName: (name: string) => void
  /** Null while the place or the name is missing. */
  sender: Sender | null
  missing: 'place' | 'name' | null
}

/** Who reports, and from where: the gauge and its observer, unless something else is said. */
export function useSender(form: UrgentForm): SenderState {
  const [isElsewhere, setElsewhere] = useState(form.gauge === null)
  const [place, setPlace] = useState<PlaceTyped>({ latDeg: null, lonDeg: null, name: '' })
  const [name, setName] = useStored('gaugewright.urgentName', '')
  const by = (form.observerName ?? name).trim()
  const where = isElsewhere || form.gauge === null ? placeOf(place) : { kind: 'gauge' as const, gaugeId: form.gauge.id }
  const missing = where === null ? 'place' : by === '' ? 'name' : null
  const sender = where === null || by === '' ? null : { where, by }
  return { isElsewhere, setElsewhere, place, setPlace, name, setName, sender, missing }
}

function placeOf({ latDeg, lonDeg, name }: PlaceTyped): Extract<Sender['where'], { kind: 'place' }> | null {
  if (latDeg === null || lonDeg === null || Math.abs(latDeg) > 90 || Math.abs(lonDeg) > 180) return null
  return { kind: 'place', latDeg, lonDeg, name: name.trim() === '' ? null : name.trim() }
}
