/** What can be told in an urgent report, apart from the schemas, so that a phone need not load these to draw a form. */
export const urgentKinds = ['hail', 'rain', 'flooding', 'wind', 'snow'] as const
export const stoneMeasures = ['ruler', 'object', 'phone ruler'] as const
export const stoneShapes = ['round', 'oval', 'cone', 'flat', 'spiked', 'irregular'] as const
export const groundCovers = ['few stones', 'scattered', 'half covered', 'covered', 'drifts'] as const
export const damages = [
  'people hurt',
  'vehicles',
  'windows',
  'roofs',
  'crops',
  'trees',
  'power lines',
  'other',
] as const
export const floodedThings = ['street', 'stream', 'river', 'basement', 'building', 'field'] as const
export const waterDepths = ['ankle', 'knee', 'waist', 'above waist'] as const

/** The largest stone that is taken: half as large again as the largest on record, 8 in. */
export const largestStoneMm = 305
