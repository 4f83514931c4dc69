import { useId, useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './RuleThreshold.module.css'
import { countPlaces, parseOdds } from './ruleView.ts'
import type { RuleDesk } from './useRule.ts'

/** The threshold by slider, by number, or by what is wished for. The slider's steps grow finer toward certainty. */
export function RuleThreshold({ desk }: { desk: RuleDesk }) {
  const { words, format } = useWords()
  const { rule: own } = words
  const id = useId()
  const { points, place } = desk
  const point = points[place]
  return (
    <fieldset className={styles.threshold} disabled={!desk.isOn}>
      <legend className="sr-only">{own.threshold}</legend>
      <div className={styles.line}>
        <label htmlFor={id}>{own.threshold}</label>
        <OddsField key={`${desk.letStandAt} ${desk.isOn}`} desk={desk} />
      </div>
      <input
        id={id}
        className={styles.slider}
        type="range"
        min={0}
        max={Math.max(0, points.length - 1)}
        step={1}
        value={Math.max(0, place)}
        disabled={points.length === 0}
        aria-valuetext={
          point
            ? fill(own.thresholdValue, {
                odds: format.odds(point.letStandAt),
                left: format.number(point.leftAMorning, countPlaces(point.leftAMorning)),
                wrong: format.number(point.year.expected, countPlaces(point.year.expected)),
              })
            : undefined
        }
        onChange={(event) => desk.choosePlace(Number(event.target.value))}
      />
      <div className={styles.ends} aria-hidden="true">
        <span>{own.looser}</span>
        <span>{own.stricter}</span>
      </div>
      <Wish desk={desk} />
    </fieldset>
  )
}

/** What is typed counts when the field is left, or by Enter; until then it may be half a number. */
function OddsField({ desk }: { desk: RuleDesk }) {
  const { words, format } = useWords()
  const { rule: own } = words
  const [text, setText] = useState(format.odds(desk.letStandAt))
  const [isTrouble, setTrouble] = useState(false)
  const noteId = useId()
  const take = () => {
    const odds = parseOdds(text)
    setTrouble(odds === null)
    if (odds !== null && odds !== desk.letStandAt) desk.choose({ letStandAt: odds })
  }
  return (
    <>
      <input
        className={styles.number}
        inputMode="decimal"
        autoComplete="off"
        aria-label={own.threshold}
        aria-invalid={isTrouble}
        aria-describedby={noteId}
        value={text}
        onChange={(event) => setText(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return
          event.preventDefault()
          take()
        }}
      />
      <span id={noteId} className={isTrouble ? styles.trouble : styles.hint} role={isTrouble ? 'alert' : undefined}>
        {isTrouble ? own.thresholdTrouble : own.thresholdHint}
      </span>
    </>
  )
}

/** The threshold that lets through no more wrong readings a year than wished. */
function Wish({ desk }: { desk: RuleDesk }) {
  const { words } = useWords()
  const { rule: own } = words
  const [text, setText] = useState('')
  const wished = Number(text.replace(',', '.'))
  const isNumber = text.trim() !== '' && wished >= 0
  const find = () => {
    if (isNumber) desk.wish(wished)
  }
  return (
    <div className={styles.wish}>
      <label>
        {own.wish}
        <input
          className={styles.number}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          onChange={(event) => setText(event.target.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return
            event.preventDefault()
            find()
          }}
        />
      </label>
      <Button onClick={find} disabled={!isNumber || desk.points.length === 0}>
        {own.wishFind}
      </Button>
      {desk.wishMissed ? (
        <span className={styles.trouble} role="alert">
          {own.wishNone}
        </span>
      ) : null}
    </div>
  )
}
