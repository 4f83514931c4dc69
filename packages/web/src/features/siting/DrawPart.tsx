/** Tools to draw with: outline and obstacles corner by corner or with their usual size, hazards, slope, the gauge. */
import { siteWords } from '@gaugewright/drawings'
import { type HazardKind, hazardKinds, type ObstacleKind } from '@gaugewright/science'
import { Button } from '../../ui/Button.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import { LengthField } from './LengthField.tsx'
import { type Chosen, freshId, middleOf, usualObstacle, withHazard } from './planItems.ts'
import styles from './SitePage.module.css'
import type { EditedPlan } from './usePlan.ts'

export type DrawTool = ObstacleKind | 'outline' | null
const drawTools = ['outline', 'house', 'tree', 'fence', 'hedge', 'shed', 'wall', 'pole', 'other'] as const

type Props = {
  edited: EditedPlan
  tool: DrawTool
  onTool: (tool: DrawTool) => void
  onChoose: (chosen: Chosen) => void
  language: 'en' | 'es'
}

export function DrawPart({ edited, tool, onTool, onChoose, language }: Props) {
  const words = sitingWords[language]
  const shared = siteWords[language]
  const { plan } = edited
  const middle = plan.outline.length > 0 ? middleOf(plan.outline) : { xM: 0, yM: 0 }
  const addUsual = (kind: ObstacleKind) => {
    const id = freshId(plan)
    edited.set({ ...plan, obstacles: [...plan.obstacles, usualObstacle(id, kind, middle)] })
    onChoose({ kind: 'obstacle', id })
    onTool(null)
  }
  const addHazard = (kind: HazardKind) => {
    const id = freshId(plan)
    edited.set(withHazard(plan, id, kind, middle))
    onChoose({ kind: 'hazard', id })
  }
  return (
    <div className={styles.part}>
      <div className={styles.tools}>
        {drawTools.map((kind) => (
          <Button key={kind} aria-pressed={tool === kind} onClick={() => onTool(tool === kind ? null : kind)}>
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
        <select value="" onChange={(event) => event.target.value !== '' && addHazard(event.target.value as HazardKind)}>
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
  )
}
