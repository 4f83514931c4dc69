import type { MyReading, MyRecord } from '@gaugewright/contract'
import { formatAmount, type Language, type Unit } from '@gaugewright/science'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import { sayAmount } from './amountText.ts'
import { BarChart } from './BarChart.tsx'
import styles from './MyPage.module.css'
import { sayDay, sayMonth, sayShortDay } from './sayTime.ts'

type Props = {
  record: MyRecord
  readings: readonly MyReading[]
  unit: Unit
  language: Language
  words: MyWords
  onCorrect: (reading: MyReading) => void
}

/** One's own record: this month, this year, the last years, the rank of the newest day, and the way to correct a reading. */
export function RecordView({ record, readings, unit, language, words, onCorrect }: Props) {
  const own = words.record
  const say = (amountUm: number) => formatAmount({ amountUm, isTrace: false }, unit, language, 'full')
  const bare = (amountUm: number) => formatAmount({ amountUm, isTrace: false }, unit, language)
  const total = ({ totalUm, isTrace, wetDays, readDays, days }: MyRecord['year']) =>
    fill(own.total, {
      amount: isTrace ? words.traceWord : say(totalUm),
      wet: wetDays,
      read: readDays,
      days,
    })
  const { month, monthDays, months, year, years, rank, firstDay } = record
  const top = (amounts: readonly (number | null)[]) => say(Math.max(0, ...amounts.map((one) => one ?? 0)))
  const asText = (pairs: readonly (readonly [string, string])[]) =>
    pairs.map(([name, value]) => `${name} ${value}`).join(', ')
  return (
    <>
      <section className={styles.card} aria-labelledby="month-heading">
        <h2 id="month-heading">{own.month}</h2>
        <p data-testid="month-total">{total(month)}</p>
        {record.monthUsualUm === null ? null : <p>{fill(own.usual, { amount: say(record.monthUsualUm) })}</p>}
        <BarChart
          label={fill(own.chartDays, {
            text: asText(
              monthDays.map(({ day, amountUm, isTrace }) => [
                day.slice(8),
                amountUm === null ? own.notRead : isTrace ? words.traceWord : bare(amountUm),
              ]),
            ),
          })}
          top={top(monthDays.map(({ amountUm }) => amountUm))}
          everyLabel={monthDays.length > 16 ? 5 : 2}
          bars={monthDays.map(({ day, amountUm, isTrace }) => ({
            label: String(Number(day.slice(8))),
            value: amountUm,
            isTrace,
          }))}
        />
        {rank === null ? null : (
          <p>
            {fill(own.rank, {
              ...rank,
              day: sayDay(rank.day, language),
              amount: say(rank.amountUm),
              since: firstDay?.slice(0, 4) ?? '',
            })}
          </p>
        )}
      </section>
      <section className={styles.card} aria-labelledby="year-heading">
        <h2 id="year-heading">{own.year}</h2>
        <p>{total(year)}</p>
        <BarChart
          label={fill(own.chartMonths, {
            text: asText(months.map((one) => [sayMonth(one.month, language), bare(one.totalUm)])),
          })}
          top={top(months.map(({ totalUm }) => totalUm))}
          bars={months.map((one) => ({ label: sayMonth(one.month, language), value: one.totalUm }))}
        />
      </section>
      {years.length < 2 ? null : (
        <section className={styles.card} aria-labelledby="years-heading">
          <h2 id="years-heading">{own.years}</h2>
          <BarChart
            label={fill(own.chartYears, {
              text: asText(years.map((one) => [String(one.year), `${bare(one.totalUm)} (${bare(one.toDateUm)})`])),
            })}
            top={top(years.map(({ totalUm }) => totalUm))}
            bars={years.map((one) => ({ label: String(one.year), value: one.totalUm, part: one.toDateUm }))}
          />
          <p className={styles.note}>{fill(own.chartYears, { text: '' }).replace(/:\s*$/, '.')}</p>
        </section>
      )}
      <section className={styles.card} aria-labelledby="list-heading">
        <h2 id="list-heading">{own.list}</h2>
        <ul className={styles.list}>
          {readings.slice(0, 31).map((reading) => {
            const { firstDay: first, lastDay: last } = reading
            const days =
              first === last
                ? sayShortDay(last, language)
                : fill(own.days, { first: sayShortDay(first, language), last: sayShortDay(last, language) })
            return (
              <li key={reading.id} className={styles.item}>
                <p className={styles.grow}>
                  {days}: <strong>{sayAmount(reading, unit, language, words)}</strong>
                  {reading.isCorrection ? ` (${own.corrected})` : ''}
                </p>
                <button
                  type="button"
                  className={styles.button}
                  aria-label={`${own.correct}: ${days}`}
                  onClick={() => onCorrect(reading)}
                >
                  {own.correct}
                </button>
              </li>
            )
          })}
        </ul>
      </section>
    </>
  )
}
