/** Mornings side by side: a bar where answered, half a bar within a total, a ring while away, a gap where silent. */
export function DayStrip({ strip, label }: { strip: string; label: string }) {
  const width = strip.length * 5
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${width} 16`}
      width={Math.min(width, 300)}
      height="16"
      preserveAspectRatio="none"
    >
      <path d={`M0,15.5H${width}`} stroke="var(--line-strong)" />
      {[...strip].map((state, at) => {
        const x = at * 5
        const key = `${at} ${state}`
        if (state === 'a') return <rect key={key} x={x + 0.7} y="1" width="3.6" height="14" fill="var(--accent)" />
        if (state === 'c') return <rect key={key} x={x + 0.7} y="8" width="3.6" height="7" fill="var(--accent)" />
        if (state === 'w') return <circle key={key} cx={x + 2.5} cy="11" r="1.7" fill="none" stroke="var(--ink-soft)" />
        return null
      })}
    </svg>
  )
}
