import { floodedThings, waterDepths } from '@gaugewright/contract'
import { useFormInUse } from './FormContext.tsx'
import type { MoreProps } from './moreDraft.ts'
import { OneOf, SomeOf, YesNo } from './Options.tsx'
import type { SeenOf } from './urgentDraft.ts'

/** Water as it is judged from a safe place. */
export function FloodingMore({ seen, onSeen }: MoreProps<SeenOf<'flooding'>>) {
  const { words } = useFormInUse()
  return (
    <>
      <SomeOf
        label={words.floodingTitle}
        values={seen.things}
        options={floodedThings.map((thing) => ({ value: thing, label: words.things[thing] }))}
        // At least one thing is under water, or it is no flooding.
        onChange={(things) => things.length > 0 && onSeen({ ...seen, things })}
      />
      <OneOf
        label={words.depthTitle}
        value={seen.depth ?? null}
        options={waterDepths.map((depth) => ({ value: depth, label: words.depths[depth] }))}
        onChange={(depth) => onSeen({ ...seen, depth })}
      />
      <YesNo
        label={words.rising}
        value={seen.isRising ?? null}
        onChange={(isRising) => onSeen({ ...seen, isRising })}
        words={words}
      />
      <YesNo
        label={words.fast}
        value={seen.isFast ?? null}
        onChange={(isFast) => onSeen({ ...seen, isFast })}
        words={words}
      />
    </>
  )
}
