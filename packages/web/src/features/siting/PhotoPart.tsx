/**
 * An obstacle's angle from a photo taken at the height of the rim. The photo stays in the browser; what it says of its lens
 * is read, what it says of its place is not.
 */
import { degrees, type LengthUnit, lengthText, told } from '@gaugewright/drawings'
import type { PhotoPoint } from '@gaugewright/science'
import { type ChangeEvent, useEffect, useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { sitingWords } from '../../words/sitingWords.ts'
import { LengthField } from './LengthField.tsx'
import { type Opened, openPhoto } from './openedPhoto.ts'
import { type MarkName, PhotoMarks } from './PhotoMarks.tsx'
import { focalOf, measure } from './photoMeasure.ts'
import { freshId, rectangle, round } from './planItems.ts'
import styles from './SitePage.module.css'
import type { EditedPlan } from './usePlan.ts'

type Props = {
  edited: EditedPlan
  language: 'en' | 'es'
  unit: LengthUnit
  photo: Opened | null
  onPhoto: (photo: Opened | null) => void
  /** Those that go with the survey when it is saved. */
  kept: readonly Opened[]
  onKeep: (photo: Opened, keep: boolean) => void
}

const SEEN_WIDTH_DEG = 20

export function PhotoPart({ edited, language, unit, photo, onPhoto, kept, onKeep }: Props) {
  const words = sitingWords[language].photo
  const number = sitingWords[language].number
  const [isBad, setIsBad] = useState(false)
  const [marks, setMarks] = useState<Partial<Record<MarkName, PhotoPoint>>>({})
  const [typedMm, setTypedMm] = useState<number | null>(null)
  const [lengthM, setLengthM] = useState<number | null>(null)
  const [lengthAwayM, setLengthAwayM] = useState<number | null>(null)
  const [cameraM, setCameraM] = useState(edited.plan.gauge?.rimM ?? 0.6)
  const [bearingDeg, setBearingDeg] = useState<number | null>(null)
  const [measuredM, setMeasuredM] = useState<number | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: marks belong to their photo
  useEffect(() => {
    setMarks({})
    setTypedMm(null)
  }, [photo])

  const open = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0]
    event.target.value = ''
    if (file === undefined) return
    const opened = await openPhoto(file)
    setIsBad(opened === null)
    if (opened === null) return
    onPhoto(opened)
  }
  const mm = photo?.equivalentMm ?? typedMm
  const focal = focalOf(mm, marks, lengthM, lengthAwayM)
  const angles =
    photo === null || focal === null || marks.top === undefined ? null : measure(photo, focal, marks, cameraM)
  const distanceM = measuredM ?? angles?.distanceM ?? null
  const topM =
    angles === null || distanceM === null ? null : cameraM + distanceM * Math.tan((angles.elevationDeg * Math.PI) / 180)
  const add = () => {
    if (bearingDeg === null || distanceM === null || topM === null) return
    const { plan } = edited
    const at = plan.gauge?.at ?? { xM: 0, yM: 0 }
    edited.set({
      ...plan,
      outline: plan.outline.length === 0 ? rectangle(at, 12, 12) : plan.outline,
      gauge: plan.gauge ?? { at, rimM: round(cameraM), hasWindShield: false },
      obstacles: [
        ...plan.obstacles,
        {
          id: freshId(plan),
          kind: 'other',
          name: '',
          shape: {
            form: 'bearing',
            seenFrom: at,
            bearingDeg: ((bearingDeg % 360) + 360) % 360,
            distanceM: round(distanceM),
            topM: round(topM),
            widthDeg: SEEN_WIDTH_DEG,
          },
        },
      ],
    })
    setMarks({})
    setBearingDeg(null)
    setMeasuredM(null)
  }
  const asked: MarkName[] = ['top', 'foot', 'horizon', 'horizon2', ...(mm === null ? (['a', 'b'] as const) : [])]
  return (
    <div className={styles.photo}>
      <p>{words.intro}</p>
      <label className={styles.file}>
        {words.choose}
        <input className={styles.fileInput} type="file" accept="image/*" onChange={(event) => void open(event)} />
      </label>
      {isBad ? (
        <p role="alert" className={styles.bad}>
          {words.unreadable}
        </p>
      ) : null}
      {photo === null ? (
        <p className={styles.soft}>{words.local}</p>
      ) : (
        <>
          {photo.equivalentMm === null ? (
            <div>
              <p role="status">{words.noFocal}</p>
              <div className={styles.seenRow}>
                <LengthField label={words.length} value={lengthM} unit={unit} hint={number} onChange={setLengthM} />
                <LengthField
                  label={words.lengthDistance}
                  value={lengthAwayM}
                  unit={unit}
                  hint={number}
                  onChange={setLengthAwayM}
                />
                <LengthField label={words.typeFocal} value={typedMm} unit="mm" hint={number} onChange={setTypedMm} />
              </div>
            </div>
          ) : (
            <p>{told(words.focal, { mm: String(Math.round(photo.equivalentMm)) })}</p>
          )}
          <PhotoMarks photo={photo} marks={marks} asked={asked} onMarks={setMarks} language={language} />
          <div className={styles.seenRow}>
            <LengthField label={words.camera} value={cameraM} unit={unit} hint={number} onChange={setCameraM} />
            <LengthField label={words.bearing} value={bearingDeg} unit="°" hint={number} onChange={setBearingDeg} />
            <LengthField
              label={words.useDistance}
              value={measuredM}
              unit={unit}
              hint={number}
              onChange={setMeasuredM}
            />
          </div>
          {angles === null ? null : (
            <div role="status" className={styles.photoResult} data-testid="photo-result">
              <p>
                <strong>
                  {told(words.result, {
                    angle: degrees(angles.elevationDeg, language, 1),
                    error: degrees(angles.elevationSdDeg, language, 1),
                  })}
                </strong>
              </p>
              {angles.distanceM === null || angles.topM === null ? null : (
                <p>
                  {told(words.distance, {
                    distance: lengthText(angles.distanceM, unit, language),
                    error: lengthText(angles.distanceSdM ?? 0, unit, language),
                    height: lengthText(angles.topM, unit, language),
                    heightError: lengthText(angles.topSdM ?? 0, unit, language),
                  })}
                </p>
              )}
              {angles.isDistanceWeak && measuredM === null ? <p>▲ {words.weak}</p> : null}
            </div>
          )}
          <div className={styles.acts}>
            <Button look="primary" disabled={bearingDeg === null || distanceM === null || topM === null} onClick={add}>
              {words.add}
            </Button>
            <Button onClick={() => onPhoto(null)}>{words.clear}</Button>
          </div>
          {photo.keptAs !== null ? null : (
            <label className={styles.check}>
              <input
                type="checkbox"
                checked={kept.includes(photo)}
                onChange={(event) => onKeep(photo, event.target.checked)}
              />
              {words.keep}
            </label>
          )}
        </>
      )}
    </div>
  )
}
