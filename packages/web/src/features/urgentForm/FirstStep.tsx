import type { UrgentKind } from '@gaugewright/contract'
import { useState } from 'react'
import { newUuid } from '../../api/urgentForm/newUuid.ts'
import { fill } from '../../words/fill.ts'
import { AmountFirst } from './AmountFirst.tsx'
import { instantMinutesAgo } from './clockTimes.ts'
import { useFormInUse } from './FormContext.tsx'
import styles from './form.module.css'
import { HailFirst } from './HailFirst.tsx'
import { EmergencyLine } from './SafetyPanel.tsx'
import { StepHeading } from './StepHeading.tsx'
import { TileFirst } from './TileFirst.tsx'
import { makeFiling, type Seen } from './urgentDraft.ts'
import { useSender } from './useSender.ts'
import type { UrgentSending } from './useUrgentSending.ts'
import { WhenStrip } from './WhenStrip.tsx'
import { WhereFields } from './WhereFields.tsx'

interface Props {
  kind: UrgentKind
  sending: UrgentSending
  onFiled: (reportId: string) => void
}

/** The second touch: how large, how much, where or what. It files the report. */
export function FirstStep({ kind, sending, onFiled }: Props) {
  const { words, form } = useFormInUse()
  const sender = useSender(form)
  const [minutesAgo, setMinutesAgo] = useState(0)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [isFiling, setFiling] = useState(false)
  // What the phone does not know is asked before the touch that sends.
  const [isOpen, setOpen] = useState(sender.missing !== null)
  const place =
    sender.isElsewhere || form.gauge === null ? words.wherePlace : fill(words.whereGauge, { gauge: form.gauge.name })
  const titles = {
    hail: words.hailTitle,
    rain: words.rainTitle,
    flooding: words.floodingTitle,
    wind: words.windTitle,
    snow: words.snowTitle,
  }
  const onSeen = async (seen: Seen) => {
    // A double touch is one report.
    if (isFiling) return
    if (sender.sender === null) {
      setTrouble(sender.missing === 'place' ? words.placeMissing : words.nameMissing)
      setOpen(true)
      return
    }
    setFiling(true)
    const now = Date.now()
    const seenAtUtc = instantMinutesAgo(minutesAgo, now)
    const filing = makeFiling({ sender: sender.sender, seen, seenAtUtc }, newUuid, new Date(now).toISOString())
    try {
      await sending.file(filing)
      onFiled(filing.id)
    } catch {
      setTrouble(words.keepFailed)
      setFiling(false)
    }
  }
  const file = (seen: Seen) => void onSeen(seen)
  return (
    <>
      <StepHeading>{titles[kind]}</StepHeading>
      <details className={styles.details} open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          {minutesAgo === 0 ? words.now : fill(words.minutesAgo, { minutes: minutesAgo })}, {place}{' '}
          <em>{words.change}</em>
        </summary>
        <div>
          <WhenStrip minutes={minutesAgo} onChange={setMinutesAgo} />
          <WhereFields state={sender} />
        </div>
      </details>
      {kind === 'hail' ? <HailFirst onSeen={file} /> : null}
      {kind === 'rain' || kind === 'snow' ? <AmountFirst kind={kind} onSeen={file} /> : null}
      {kind === 'flooding' || kind === 'wind' ? <TileFirst kind={kind} onSeen={file} /> : null}
      {trouble === null ? null : (
        <p className={styles.trouble} role="alert">
          {trouble}
        </p>
      )}
      <EmergencyLine />
    </>
  )
}
