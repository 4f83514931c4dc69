import { useCallback, useRef, useState } from 'react'
import { useStored } from '../../hooks/useStored.ts'
import type { MapMeasure } from './mapAsk.ts'
import type { RollFilter } from './rollView.ts'
import type { WhatIfAct } from './whatIfAsk.ts'

export type Panel = 'docket' | 'map' | 'evidence' | 'roll'
export type Letter = { text: string; observerName: string | null; nextGaugeId: string | null }

/** What is open, typed and pointed at on Today: everything that is the screen's own and not the desk's. */
export function useShown() {
  const [panel, setPanel] = useState<Panel>('docket')
  const [list, setList] = useState<'docket' | 'roll'>('docket')
  const [filter, setFilter] = useState<RollFilter>('all')
  const [search, setSearch] = useState('')
  const [measure, setMeasure] = useState<MapMeasure>('amount')
  const [isohyets, setIsohyets] = useState(true)
  const [hoveredGaugeId, setHovered] = useState<string | null>(null)
  const [weighed, setWeighed] = useState<{ readingId: string; act: WhatIfAct } | null>(null)
  const [reason, setReason] = useState('')
  const [dialog, setDialog] = useState<'amend' | 'keys' | null>(null)
  const [letter, setLetter] = useState<Letter | null>(null)
  const [singleKeys, setSingleKeys] = useStored('gaugewright.singleKeys', 'on')
  const reasonRef = useRef<HTMLInputElement>(null)
  const searchRef = useRef<HTMLInputElement>(null)
  const rollOrder = useRef<string[]>([])
  const keepOrder = useCallback((order: string[]) => {
    rollOrder.current = order
  }, [])
  const showList = (which: 'docket' | 'roll') => {
    setList(which)
    setPanel(which)
  }
  return {
    panel,
    setPanel,
    list,
    showList,
    filter,
    setFilter,
    /** The roll with one answer only, and nothing searched. */
    showRoll: (which: RollFilter) => {
      setFilter(which)
      setSearch('')
      showList('roll')
    },
    search,
    setSearch,
    searchRef,
    rollOrder,
    keepOrder,
    measure,
    setMeasure,
    isohyets,
    setIsohyets,
    hoveredGaugeId,
    setHovered,
    /** The decision about a reading that is weighed, where the coordinator chose one. */
    weighed,
    setWeighed,
    reason,
    setReason,
    reasonRef,
    dialog,
    setDialog,
    letter,
    setLetter,
    singleKeysOn: singleKeys === 'on',
    setSingleKeysOn: (on: boolean) => setSingleKeys(on ? 'on' : 'off'),
  }
}
