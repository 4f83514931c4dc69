/** Amounts, days and periods as the pages name them. */

export function amountOf(unit: 'mm' | 'in', language: 'en' | 'es'): (mm: number) => string {
  const places = unit === 'in' ? 2 : 1
  const format = new Intl.NumberFormat(language, { minimumFractionDigits: places, maximumFractionDigits: places })
  return (mm) => `${format.format(unit === 'in' ? mm / 25.4 : mm)} ${unit}`
}

export function dayName(day: string, language: 'en' | 'es'): string {
  return new Intl.DateTimeFormat(language, { day: 'numeric', month: 'long', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00:00Z`),
  )
}

export function periodName(period: string, language: 'en' | 'es'): string {
  if (period.length === 4) return period
  return new Intl.DateTimeFormat(language, { month: 'long', year: 'numeric', timeZone: 'UTC' }).format(
    new Date(`${period}-01T00:00:00Z`),
  )
}

export function monthName(period: string, language: 'en' | 'es'): string {
  return new Intl.DateTimeFormat(language, { month: 'long', timeZone: 'UTC' }).format(
    new Date(`${period}-01T00:00:00Z`),
  )
}
