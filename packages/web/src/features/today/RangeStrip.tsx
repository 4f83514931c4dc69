import styles from './RangeStrip.module.css'

type Props = { lowMm: number; middleMm: number; highMm: number; typedMm: number; maxMm: number }

/** Expected range and typed amount on one small square-root axis, the same for the whole docket. The words say it too. */
export function RangeStrip({ lowMm, middleMm, highMm, typedMm, maxMm }: Props) {
  const x = (mm: number) => 5 + 110 * Math.sqrt(Math.max(0, mm) / Math.max(maxMm, 1))
  return (
    <svg className={styles.strip} viewBox="0 0 120 18" width="120" height="18" aria-hidden="true">
      <path className={styles.axis} d="M5 12.5H115M5 9.5v6M115 9.5v6" />
      <rect className={styles.band} x={x(lowMm)} y="9.5" width={Math.max(2, x(highMm) - x(lowMm))} height="6" rx="1" />
      <path className={styles.middle} d={`M${x(middleMm)} 8v9`} />
      <path className={styles.typed} d={`M${x(typedMm)} 9.5l-3.6 -7h7.2z`} />
    </svg>
  )
}
