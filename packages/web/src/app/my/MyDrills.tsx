import { useEffect, useState } from 'react'
import { askMyDrills, saveSitting } from '../../api/drills.ts'
import { DrillPage } from '../../features/drills/DrillPage.tsx'

/** Before the desk has told its own. */
const USUAL_PASS_MARK = 0.8

/** Drills on the observer's page: kept with the network when done. */
export function MyDrills({ language, unit }: { language: 'en' | 'es'; unit: 'in' | 'mm' }) {
  const [passMark, setPassMark] = useState(USUAL_PASS_MARK)
  useEffect(() => {
    askMyDrills()
      .then(({ settings }) => setPassMark(settings.passMark))
      // Without a signal the usual mark stands; the desk marks the sitting by its own.
      .catch(() => undefined)
  }, [])
  return (
    <DrillPage
      language={language}
      unit={unit}
      storeKey="gaugewright.my.drills"
      passMark={passMark}
      onDone={async (sitting) => void (await saveSitting(sitting))}
      back={{ href: '#' }}
    />
  )
}
