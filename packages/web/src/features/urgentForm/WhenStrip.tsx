import { fill } from '../../words/fill.ts'
import { minutesAgoOffered } from './clockTimes.ts'
import { useFormInUse } from './FormContext.tsx'
import { OneOf } from './Options.tsx'

/** Now, unless said otherwise: a report of an hour ago must not look like one of this minute. */
export function WhenStrip({ minutes, onChange }: { minutes: number; onChange: (minutes: number) => void }) {
  const { words } = useFormInUse()
  return (
    <OneOf
      label={words.whenTitle}
      value={String(minutes)}
      options={minutesAgoOffered.map((offered) => ({
        value: String(offered),
        label: offered === 0 ? words.now : fill(words.minutesAgo, { minutes: offered }),
      }))}
      onChange={(value) => onChange(Number(value))}
    />
  )
}
