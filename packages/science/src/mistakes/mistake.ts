/** The named ways in which a report goes wrong (docs/model.md). The order is the order of every list and export. */
export const mistakes = [
  'decimal',
  'unit',
  'day',
  'carried',
  'first-fill-lost',
  'first-fill-only',
  'false-zero',
  'wetted',
  'transposed',
  'repeated',
  'other',
] as const

export type Mistake = (typeof mistakes)[number]
export type ExplanationKind = 'stands' | Mistake
