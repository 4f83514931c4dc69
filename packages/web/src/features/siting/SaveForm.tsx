import { told } from '@gaugewright/drawings'
import type { YardPlan } from '@gaugewright/science'
import { type FormEvent, useState } from 'react'
import type { PhotoToKeep } from '../../api/photos/surveyPhotos.ts'
import { Button } from '../../ui/Button.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import styles from './SitePage.module.css'

export interface SaveAsk {
  surveyedOn: string
  note: string
  plan: YardPlan
  photos: readonly PhotoToKeep[]
}

type Props = {
  language: 'en' | 'es'
  today: string
  isReady: boolean
  isChanged: boolean
  photoCount: number
  onDiscard: () => void
  onSave: (ask: Pick<SaveAsk, 'surveyedOn' | 'note'>) => Promise<boolean>
}

export function SaveForm({ language, today, isReady, isChanged, photoCount, onDiscard, onSave }: Props) {
  const words = sitingWords[language].save
  const [surveyedOn, setDay] = useState(today)
  const [note, setNote] = useState('')
  const [state, setState] = useState<'idle' | 'saving' | 'saved'>('idle')
  const save = async (event: FormEvent) => {
    event.preventDefault()
    setState('saving')
    const isSaved = await onSave({ surveyedOn, note })
    if (isSaved) setNote('')
    setState(isSaved ? 'saved' : 'idle')
  }
  return (
    <form className={styles.save} onSubmit={(event) => void save(event)}>
      <h3>{words.title}</h3>
      <label className={styles.field}>
        {words.day}
        <input type="date" value={surveyedOn} max={today} required onChange={(event) => setDay(event.target.value)} />
      </label>
      <label className={styles.field}>
        {words.note}
        <textarea value={note} maxLength={2000} rows={2} onChange={(event) => setNote(event.target.value)} />
      </label>
      {photoCount === 0 ? null : <p>{told(words.photos, { count: String(photoCount) })}</p>}
      <div className={styles.acts}>
        <Button type="submit" look="primary" disabled={!isReady || state === 'saving'}>
          {words.button}
        </Button>
        {isChanged ? (
          <Button look="quiet" onClick={onDiscard}>
            {words.discard}
          </Button>
        ) : null}
      </div>
      <p role="status" className={styles.soft}>
        {state === 'saved' && !isChanged ? words.saved : isChanged ? words.draft : ''}
      </p>
    </form>
  )
}
