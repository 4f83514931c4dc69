import type { RulePoint, RulePreview } from '@gaugewright/contract'
import { problemFrom } from '../../api/problemError.ts'
import { Choice } from '../../ui/Choice.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { RulePlot } from './RulePlot.tsx'
import styles from './RulePreviewPane.module.css'
import { countPlaces, isShort, isYoung, leftShare } from './ruleView.ts'
import type { RuleDesk } from './useRule.ts'
import type { lookBacks } from './useRulePreview.ts'

/** What the rule being chosen would do, to be looked at first and read second. */
export function RulePreviewPane({ desk }: { desk: RuleDesk }) {
  const { words, format } = useWords()
  const { rule: own } = words
  const { preview, progress, points, place } = desk
  const found = preview.data
  const point = points[place]
  return (
    <section className={styles.pane} aria-labelledby="rule-preview-heading" aria-busy={preview.isFetching}>
      <div className={styles.head}>
        <h3 id="rule-preview-heading">{own.previewHeading}</h3>
        <Choice
          label={own.lookBack}
          labelHidden
          value={desk.lookBack}
          options={(['month', 'season', 'year'] as const satisfies readonly (keyof typeof lookBacks)[]).map(
            (value) => ({ value, label: own.lookBacks[value] }),
          )}
          onChange={desk.setLookBack}
        />
      </div>
      {preview.isFetching ? (
        <label className={styles.progress} role="status">
          {progress ? fill(own.working, progress) : words.loading}
          <progress max={progress?.total ?? 1} {...(progress && { value: progress.done })} />
        </label>
      ) : null}
      {preview.error ? <Notice problem={problemFrom(preview.error)} onRetry={() => void preview.refetch()} /> : null}
      {found && point ? (
        <>
          <RulePlot
            points={points}
            place={place}
            placeInForce={desk.placeInForce}
            isOn={desk.isOn}
            onPlace={desk.choosePlace}
          />
          <Figures point={point} isOn={desk.isOn} mornings={found.mornings} />
          <p className={styles.soft}>
            {fill(own.basis, {
              mornings: found.mornings,
              first: format.dayPlain(found.firstDay),
              last: format.dayPlain(found.lastDay),
              readings: format.whole(found.readings),
            })}{' '}
            {found.cannotTell > 0 ? fill(own.unknown, { count: format.whole(found.cannotTell) }) : ''}{' '}
            {isYoung(found) ? own.young : isShort(found) ? own.short : ''} {own.eightInTen}
          </p>
        </>
      ) : null}
    </section>
  )
}

type FiguresProps = { point: RulePoint; isOn: boolean; mornings: RulePreview['mornings'] }

function Figures({ point, isOn, mornings }: FiguresProps) {
  const { words, format } = useWords()
  const { rule: own } = words
  const count = (value: number) => format.number(value, countPlaces(value))
  const forecast = (message: string, { expected, low, high }: RulePoint['year']) =>
    fill(message, { expected: count(expected), low, high })
  return (
    <dl className={styles.figures} data-testid="rule-figures">
      <div>
        <dt>{own.leftTitle}</dt>
        <dd>
          <b>{fill(own.left, { count: count(point.leftAMorning), share: format.percentFine(leftShare(point)) })}</b>
          <span>{fill(own.busy, { count: Math.round(point.busyMorningLeft) })}</span>
        </dd>
      </div>
      <div>
        <dt>{isOn ? own.standTitle : own.passTitle}</dt>
        <dd>
          <b>{fill(own.stand, { count: count(point.letStand / mornings) })}</b>
        </dd>
      </div>
      <div>
        <dt>{own.wrongTitle}</dt>
        <dd>
          <b>{forecast(own.year, point.year)}</b>
          <span>{forecast(own.month, point.month)}</span>
        </dd>
      </div>
    </dl>
  )
}
