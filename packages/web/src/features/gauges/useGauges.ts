import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useEffect, useMemo, useRef, useState } from 'react'
import { gaugeHabitsQuery, networkHabitsQuery } from '../../api/habits.ts'
import { useSingleKeys } from '../../hooks/useSingleKeys.ts'
import { type GaugeShow, gaugeBeside, shownGauges } from './gaugesView.ts'

/** @param code  of the gauge that the address names; null where it names none: then the first of the list is shown */
export function useGauges(code: string | null, onGo: (code: string) => void) {
  const network = useQuery(networkHabitsQuery)
  const [show, setShow] = useState<GaugeShow>('habits')
  const [search, setSearch] = useState('')
  const all = network.data?.gauges
  const gauges = useMemo(() => shownGauges(all ?? [], show, search), [all, show, search])
  const shownCode = code ?? gauges[0]?.code ?? null
  const gauge = useQuery({
    ...gaugeHabitsQuery(shownCode ?? ''),
    enabled: shownCode !== null,
    placeholderData: keepPreviousData,
  })
  const searchRef = useRef<HTMLInputElement>(null)
  const headingRef = useRef<HTMLHeadingElement>(null)
  const step = (by: -1 | 1) => {
    const beside = gaugeBeside(gauges, shownCode, by)
    if (beside !== null) onGo(beside.code)
  }
  useSingleKeys({
    j: () => step(1),
    k: () => step(-1),
    '/': () => searchRef.current?.focus(),
  })
  const isShown = gauge.data?.code === code
  useEffect(() => {
    // On a narrow screen the list gives way to the gauge: then the gauge's name takes the focus.
    if (isShown && searchRef.current?.offsetParent === null) headingRef.current?.focus()
  }, [isShown])
  return { network, gauge, gauges, shownCode, show, setShow, search, setSearch, searchRef, headingRef }
}
