import type { AreaMean } from '@gaugewright/contract'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AreaTable.module.css'

/** County means of the day with their central 80 %. */
export function AreaTable({ areas }: { areas: readonly AreaMean[] }) {
  const { words, format } = useWords()
  return (
    <table className={styles.table}>
      <thead>
        <tr>
          <th scope="col">{words.columns.area}</th>
          <th scope="col">
            {words.areaMean}, {format.unitName}
          </th>
          <th scope="col">{words.areaRange}</th>
          <th scope="col">{words.areaGauges}</th>
        </tr>
      </thead>
      <tbody>
        {areas.map((area) => (
          <tr key={area.name}>
            <th scope="row">{area.name}</th>
            <td>
              <b>{format.bare(area.meanMm)}</b>
            </td>
            <td>
              {format.bare(area.p10Mm)}–{format.bare(area.p90Mm)}
            </td>
            <td>{area.gaugeCount}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
