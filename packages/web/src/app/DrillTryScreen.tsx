import { useQuery } from '@tanstack/react-query'
import { drillsDueQuery } from '../api/drills.ts'
import { peopleQuery } from '../api/people.ts'
import { DrillPage } from '../features/drills/DrillPage.tsx'
import { useWordsInUse } from './useWordsInUse.ts'

/** The drills as observers see them, for whoever works at the desk; nothing is kept. */
export function DrillTryScreen() {
  const desk = useQuery(peopleQuery)
  const due = useQuery(drillsDueQuery)
  const { inUse } = useWordsInUse(desk.data === undefined ? undefined : { ...desk.data.network, timeZone: 'UTC' })
  if (desk.data === undefined || due.data === undefined) return null
  return (
    <DrillPage
      language={inUse.language}
      unit={desk.data.network.unit}
      storeKey="gaugewright.drills.trial"
      passMark={due.data.settings.passMark}
      onDone={null}
      back={{ href: '/people' }}
    />
  )
}
