/**
 * One site: the yard as a plan, drawn, typed or measured from photos; the gauge on it; what follows; the best spot. Works
 * for the desk and for a candidate alike: what is saved, and where, is told by props.
 */
import { photoLimits, type SurveyPhoto } from '@gaugewright/contract'
import { faultText, type LengthUnit, siteWords, told } from '@gaugewright/drawings'
import { checkYard, isDrawn, type YardPlan } from '@gaugewright/science'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import { BestSpotPart } from './BestSpotPart.tsx'
import { DrawPart, type DrawTool } from './DrawPart.tsx'
import { Findings } from './Findings.tsx'
import { ItemsPart } from './ItemsPart.tsx'
import { LengthField } from './LengthField.tsx'
import { type Opened, openPhoto } from './openedPhoto.ts'
import { PhotoPart } from './PhotoPart.tsx'
import { PlanCanvas } from './PlanCanvas.tsx'
import { type Chosen, emptyPlan, plainLot } from './planItems.ts'
import { type SaveAsk, SaveForm } from './SaveForm.tsx'
import { SeenForm } from './SeenForm.tsx'
import styles from './SitePage.module.css'
import { useBestSpots } from './useBestSpots.ts'
import { usePlan } from './usePlan.ts'

export type SitePageProps = {
  name: string
  language: 'en' | 'es'
  unit: LengthUnit
  /** Names the draft that lies in this browser. */
  siteKey: string
  saved: YardPlan | null
  today: string
  onSave: (ask: SaveAsk) => Promise<boolean>
  /** Surveys before this one, and what can be done with them. */
  history?: (acts: HistoryActs) => ReactNode
  problem?: ReactNode
}

export interface HistoryActs {
  /** Puts a plan on the sheet. */
  onLoad: (plan: YardPlan) => void
  /** Opens a photo that the desk keeps, to measure in it. */
  onMeasure: (photo: Blob, kept: SurveyPhoto) => void
}

type Part = 'draw' | 'type' | 'photo' | 'best'

export function SitePage({ name, language, unit, siteKey, saved, today, onSave, history, problem }: SitePageProps) {
  const words = sitingWords[language]
  const shared = siteWords[language]
  const edited = usePlan(siteKey, saved)
  const { plan } = edited
  const [part, setPart] = useState<Part>('draw')
  const partsAt = useRef<HTMLDivElement>(null)
  const [chosen, setChosen] = useState<Chosen>(null)
  const [tool, setTool] = useState<DrawTool>(null)
  const [isSnapping, setIsSnapping] = useState(true)
  const [ringHeightM, setRingHeightM] = useState(5)
  const [photo, setPhoto] = useState<Opened | null>(null)
  const [photos, setPhotos] = useState<readonly Opened[]>([])
  useEffect(() => () => void (photo !== null && URL.revokeObjectURL(photo.url)), [photo])
  const { search, find, clear } = useBestSpots(plan, plan.gauge?.rimM ?? 0.6)
  const faults = checkYard(plan)
  // An empty sheet is no mistake yet.
  const isEmpty = !isDrawn(plan)
  const wrong = isEmpty ? [] : faults.filter(({ weight }) => weight === 'fault')
  const remarks = faults.filter(({ weight }) => weight === 'remark')
  useUndoKeys(edited)
  return (
    <div className={styles.page}>
      <div className={styles.head}>
        <h2>{told(words.title, { name })}</h2>
        <p className={styles.soft}>{words.intro}</p>
        <p className={styles.caution}>{shared.safety}</p>
      </div>
      <div className={styles.left}>
        <div className={styles.tools}>
          <Button onClick={edited.undo} disabled={!edited.canUndo} aria-keyshortcuts="Control+Z">
            ↶ {words.undo}
          </Button>
          <Button onClick={edited.redo} disabled={!edited.canRedo} aria-keyshortcuts="Control+Shift+Z">
            ↷ {words.redo}
          </Button>
          <label className={styles.check}>
            <input type="checkbox" checked={isSnapping} onChange={(event) => setIsSnapping(event.target.checked)} />
            {words.snap}
          </label>
          {isEmpty ? (
            <Button look="primary" onClick={() => edited.load(plainLot)}>
              {words.start}
            </Button>
          ) : null}
        </div>
        <PlanCanvas
          edited={edited}
          language={language}
          unit={unit}
          chosen={chosen}
          onChoose={setChosen}
          tool={tool}
          onToolDone={() => setTool(null)}
          isSnapping={isSnapping}
          found={search.state === 'found' && wrong.length === 0 ? search.found : null}
          ringM={ringHeightM}
        />
        <div className={styles.under}>
          <LengthField
            label={words.ringHeight}
            value={ringHeightM}
            unit={unit}
            onChange={(height) => setRingHeightM(Math.min(200, Math.max(0.1, height)))}
          />
        </div>
        {wrong.length + remarks.length > 0 ? (
          <div role="status" data-testid="yard-faults">
            <ul className={styles.faults}>
              {[...wrong, ...remarks].map((fault) => (
                <li key={`${fault.code} ${fault.itemId}`} data-weight={fault.weight}>
                  {fault.weight === 'fault' ? '✕' : '▲'} {faultText(fault, plan, { language, unit })}
                </li>
              ))}
            </ul>
          </div>
        ) : null}
        <div ref={partsAt}>
          <Choice
            label={words.partsLabel}
            value={part}
            options={(['draw', 'type', 'photo', 'best'] as const).map((value) => ({
              value,
              label: words.parts[value],
            }))}
            onChange={setPart}
          />
        </div>
        {part === 'draw' ? (
          <DrawPart edited={edited} tool={tool} onTool={setTool} onChoose={setChosen} language={language} />
        ) : null}
        {part === 'type' ? <SeenForm edited={edited} language={language} unit={unit} /> : null}
        {part === 'photo' ? (
          <PhotoPart
            edited={edited}
            language={language}
            unit={unit}
            photo={photo}
            onPhoto={setPhoto}
            kept={photos}
            onKeep={(one, keep) =>
              setPhotos((all) => {
                const others = all.filter((other) => other !== one)
                return keep ? [...others, one].slice(-photoLimits.perReport) : others
              })
            }
          />
        ) : null}
        {part === 'best' ? (
          <BestSpotPart
            edited={edited}
            search={search}
            onFind={find}
            onClear={clear}
            language={language}
            unit={unit}
            hasFaults={wrong.some(({ code }) => code !== 'GAUGE_OUTSIDE_YARD' && code !== 'OBSTACLE_AROUND_GAUGE')}
          />
        ) : null}
        <ItemsPart edited={edited} chosen={chosen} onChoose={setChosen} language={language} unit={unit} />
      </div>
      <div className={styles.right}>
        <section aria-label={words.findings}>
          <h3>{words.findings}</h3>
          {wrong.length > 0 ? <p>{words.save.faults}</p> : <Findings plan={plan} language={language} unit={unit} />}
        </section>
        {problem}
        <SaveForm
          language={language}
          today={today}
          isReady={isEmpty ? photos.length > 0 : wrong.length === 0 && plan.outline.length >= 3}
          isChanged={edited.isChanged}
          photoCount={photos.length}
          onDiscard={() => edited.load(saved ?? emptyPlan)}
          onSave={async ({ surveyedOn, note }) => {
            const isSaved = await onSave({ surveyedOn, note, plan, photos })
            if (isSaved) setPhotos([])
            return isSaved
          }}
        />
        {history?.({
          onLoad: (old) => {
            edited.load(old)
            setChosen(null)
          },
          onMeasure: (file, kept) =>
            void openPhoto(file, kept).then((opened) => {
              flushSync(() => {
                setPhoto(opened)
                setPart('photo')
              })
              partsAt.current?.scrollIntoView({ block: 'start' })
            }),
        })}
      </div>
    </div>
  )
}

/** Ctrl+Z and Ctrl+Shift+Z, wherever the hand is but in a field that has an undo of its own. */
function useUndoKeys(edited: ReturnType<typeof usePlan>): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return
      if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return
      event.preventDefault()
      if (event.shiftKey) edited.redo()
      else edited.undo()
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [edited])
}
