import { saveSitting } from '../../api/drills.ts'
import { DrillPage } from '../../features/drills/DrillPage.tsx'

/** Drills on the observer's page: kept with the network when done. */
export function MyDrills({ language, unit }: { language: 'en' | 'es'; unit: 'in' | 'mm' }) {
  return (
    <DrillPage
      language={language}
      unit={unit}
      storeKey="gaugewright.my.drills"
      passMark={0.8}
      onDone={async (sitting) => void (await saveSitting(sitting))}
      back={{ href: '#' }}
    />
  )
}
