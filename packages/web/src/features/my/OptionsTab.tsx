import type { Language, Unit } from '@gaugewright/science'
import type { ReactNode } from 'react'
import { useState } from 'react'
import { forgetAll } from '../../api/my/phoneStore.ts'
import { forgetUrgent } from '../../api/urgentForm/urgentStore.ts'
import { Choice } from '../../ui/Choice.tsx'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import styles from './MyPage.module.css'

type Props = {
  unit: Unit
  language: Language
  words: MyWords
  waiting: number
  theme: ReactNode
  onUnit: (unit: Unit) => void
  onLanguage: (language: Language) => void
}

export function OptionsTab({ unit, language, words, waiting, theme, onUnit, onLanguage }: Props) {
  const own = words.options
  const [isForgotten, setForgotten] = useState(false)
  const { one, many } = words.reports.waitingCount
  const stillWaiting = waiting === 0 ? '' : waiting === 1 ? one : fill(many, { count: waiting })
  return (
    <section className={styles.card} aria-label={words.tabs.options}>
      <p>
        <a href="#drills">{own.drills}</a>
      </p>
      <p>
        <a href="#site">{own.site}</a>
      </p>
      <Choice
        label={own.language}
        value={language}
        options={[
          { value: 'en', label: 'English' },
          { value: 'es', label: 'Español' },
        ]}
        onChange={onLanguage}
      />
      <Choice
        label={own.unit}
        value={unit}
        options={(['in', 'mm'] as const).map((value) => ({ value, label: own.units[value] }))}
        onChange={onUnit}
      />
      {theme}
      <p className={styles.note}>{own.install}</p>
      <button
        type="button"
        className={styles.button}
        onClick={() => {
          if (!confirm(fill(own.forgetSure, { waiting: stillWaiting }))) return
          void Promise.all([forgetAll(), forgetUrgent()]).then(() => setForgotten(true))
        }}
      >
        {own.forget}
      </button>
      <p role="status">{isForgotten ? own.forgotten : ''}</p>
    </section>
  )
}
