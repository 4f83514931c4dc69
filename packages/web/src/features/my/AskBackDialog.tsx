import type { Language, Unit } from '@gaugewright/science'
import { useEffect, useId, useRef } from 'react'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import { sayAmount, type TypedAmount } from './amountText.ts'
import type { AskBack } from './askBack.ts'
import { GaugeDrawing } from './GaugeDrawing.tsx'
import styles from './MyPage.module.css'

type Props = {
  ask: AskBack
  unit: Unit
  language: Language
  words: MyWords
  onAnswer: (amount: TypedAmount) => void
  onBack: () => void
}

/** Asks whether the water stands here or there, with the gauge drawn at each. Nothing is said of anybody else's gauge. */
export function AskBackDialog({ ask, unit, language, words, onAnswer, onBack }: Props) {
  const title = useId()
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const shown = dialog.current
    shown?.showModal()
    return () => shown?.close()
  }, [])
  return (
    <dialog ref={dialog} className={styles.dialog} aria-labelledby={title} onCancel={onBack} data-testid="ask-back">
      <h2 id={title}>{words.ask.title}</h2>
      {ask.sentences.map((sentence) => (
        <p key={sentence} className={styles.question}>
          {sentence}
        </p>
      ))}
      <div className={ask.choices.length > 1 ? styles.choices : styles.stack}>
        {ask.choices.map((choice) => (
          <button
            key={`${choice.amountUm} ${choice.isTrace}`}
            type="button"
            className={styles.choice}
            onClick={() => onAnswer(choice)}
          >
            <GaugeDrawing amount={choice} unit={unit} language={language} words={words} isSmall />
            <span>{fill(words.ask.keep, { amount: sayAmount(choice, unit, language, words) })}</span>
          </button>
        ))}
      </div>
      <button type="button" className={styles.button} onClick={onBack}>
        {words.ask.back}
      </button>
      <p className={styles.note}>{words.ask.safety}</p>
    </dialog>
  )
}
