/** What the test networks are called in figures, and where their readings come from. */

export const networkNames: Readonly<Record<string, { title: string; source: string }>> = {
  trentino: { title: 'Trentino', source: 'trentino: data set of the R package RMAWGEN' },
  parana: { title: 'Paraná', source: 'parana: data set PRprec of the R package INLA' },
  florida: { title: 'Florida', source: 'florida: NOAA daily values through the R package tbeploads' },
}

export function titleOf(set: string): string {
  return networkNames[set]?.title ?? set
}

export function sourceOf(set: string): string {
  return networkNames[set]?.source ?? set
}
