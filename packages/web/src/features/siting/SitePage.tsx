/**
 * One site: the yard as a plan, drawn, typed or measured from photos; the gauge on it; what follows; the best spot. Works
 * for the desk and for a candidate alike: what is saved, and where, is told by props.
 */
import { photoLimits, type SurveyPhoto } from '@gaugewright/contract'
import { faultText, type LengthUnit, obstacleName, siteWords, told } from '@gaugewright/drawings'
import { checkYard, type HazardKind, hazardKinds, type ObstacleKind, type YardPlan } from '@gaugewright/science'
import { type ReactNode, useEffect, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import { BestSpotPart } from './BestSpotPart.tsx'
import { Findings } from './Findings.tsx'
import { ItemForm } from './ItemForm.tsx'
import { LengthField } from './LengthField.tsx'
import { type Opened, openPhoto } from './openedPhoto.ts'
import { PhotoPart } from './PhotoPart.tsx'
import { PlanCanvas } from './PlanCanvas.tsx'
import { type Chosen, emptyPlan, freshId, middleOf, plainLot, usualObstacle, withHazard } from './planItems.ts'
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
const drawTools = ['outline', 'house', 'tree', 'fence', 'hedge', 'shed', 'wall', 'pole', 'other'] as const

export function SitePage({ name, language, unit, siteKey, saved, today, onSave, history, problem }: SitePageProps) {
  const words = sitingWords[language]
  const shared = siteWords[language]
  const edited = usePlan(siteKey, saved)
  const { plan } = edited
  const [part, setPart] = useState<Part>('draw')
  const partsAt = useRef<HTMLDivElement>(null)
  const [chosen, setChosen] = useState<Chosen>(null)
  const [tool, setTool] = useState<ObstacleKind | 'outline' | null>(null)
  const [isSnapping, setIsSnapping] = useState(true)
  const [ringHeightM, setRingHeightM] = useState(5)
  const [photo, setPhoto] = useState<Opened | null>(null)
  const [photos, setPhotos] = useState<readonly Opened[]>([])
  useEffect(() => () => void (photo !== null && URL.revokeObjectURL(photo.url)), [photo])
  const { search, find, clear } = useBestSpots(plan, plan.gauge?.rimM ?? 0.6)
  const faults = checkYard(plan)
  // An empty sheet is no mistake yet.
  const isEmpty = plan.outline.length === 0 && plan.obstacles.length === 0 && plan.gauge === null
  const wrong = isEmpty ? [] : faults.filter(({ weight }) => weight === 'fault')
  const remarks = faults.filter(({ weight }) => weight === 'remark')
  useUndoKeys(edited)
  const middle = plan.outline.length > 0 ? middleOf(plan.outline) : { xM: 0, yM: 0 }
  const addUsual = (kind: ObstacleKind) => {
    const id = freshId(plan)
    edited.set({ ...plan, obstacles: [...plan.obstacles, usualObstacle(id, kind, middle)] })
    setChosen({ kind: 'obstacle', id })
    setTool(null)
  }
  const addHazard = (kind: HazardKind) => {
    const id = freshId(plan)
    edited.set(withHazard(plan, id, kind, middle))
    setChosen({ kind: 'hazard', id })
  }
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
          <div className={styles.part}>
            <div className={styles.tools}>
              {drawTools.map((kind) => (
                <Button key={kind} aria-pressed={tool === kind} onClick={() => setTool(tool === kind ? null : kind)}>
                  {words.draw[kind]}
                </Button>
              ))}
              {plan.gauge === null ? (
                <Button onClick={() => edited.set({ ...plan, gauge: { at: middle, rimM: 0.6, hasWindShield: false } })}>
                  {words.placeGauge}
                </Button>
              ) : null}
            </div>
            {tool === null ? null : (
              <p role="status" className={styles.soft}>
                {words.drawing} {words.drawingKeys}{' '}
                {tool === 'outline' ? null : <Button onClick={() => addUsual(tool)}>{words.addUsual}</Button>}
              </p>
            )}
            <label className={styles.field}>
              {words.hazard}
              <select
                value=""
                onChange={(event) => event.target.value !== '' && addHazard(event.target.value as HazardKind)}
              >
                <option value="">{words.add}…</option>
                {hazardKinds.map((kind) => (
                  <option key={kind} value={kind}>
                    {shared.hazards[kind]}
                  </option>
                ))}
              </select>
            </label>
            <LengthField
              label={words.fields.slope}
              value={plan.slopeDeg}
              unit="°"
              hint={words.fields.slopeUnknown}
              onChange={(slopeDeg) => edited.set({ ...plan, slopeDeg }, 'slope')}
            />
          </div>
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
        <section className={styles.items} aria-label={words.items}>
          <h3>{words.items}</h3>
          {isEmpty ? <p className={styles.soft}>{words.noItems}</p> : null}
          <ul>
            {plan.gauge === null ? null : (
              <ItemButton
                label={words.gauge}
                isChosen={chosen?.kind === 'gauge'}
                onChoose={() => setChosen({ kind: 'gauge' })}
              />
            )}
            {plan.outline.length === 0 ? null : (
              <ItemButton
                label={words.outline}
                isChosen={chosen?.kind === 'outline'}
                onChoose={() => setChosen({ kind: 'outline' })}
              />
            )}
            {plan.obstacles.map(({ id }) => (
              <ItemButton
                key={id}
                label={obstacleName(plan, id, language)}
                isChosen={chosen?.kind === 'obstacle' && chosen.id === id}
                onChoose={() => setChosen({ kind: 'obstacle', id })}
              />
            ))}
            {plan.hazards.map(({ id }) => (
              <ItemButton
                key={id}
                label={obstacleName(plan, id, language)}
                isChosen={chosen?.kind === 'hazard' && chosen.id === id}
                onChoose={() => setChosen({ kind: 'hazard', id })}
              />
            ))}
          </ul>
          <ItemForm edited={edited} chosen={chosen} onChoose={setChosen} language={language} unit={unit} />
        </section>
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

function ItemButton({ label, isChosen, onChoose }: { label: string; isChosen: boolean; onChoose: () => void }) {
  return (
    <li>
      <button type="button" className={styles.item} aria-pressed={isChosen} onClick={onChoose}>
        {label}
      </button>
    </li>
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
