/** Paths of the desk's own interface, one per use case. `:day` is an ISO date or `latest`. */
export const routes = {
  reviewDay: { method: 'GET', path: '/api/days/:day' }, // -> dayReviewSchema
  fieldForDay: { method: 'GET', path: '/api/days/:day/field' }, // -> fieldSchema
  evidence: { method: 'GET', path: '/api/days/:day/evidence/:readingId' }, // -> evidenceSchema
  whatIf: { method: 'POST', path: '/api/what-if' }, // whatIfAskSchema -> whatIfSchema
  decide: { method: 'POST', path: '/api/decisions' }, // decideAskSchema -> dayReviewSchema (the day, reviewed anew)
  undo: { method: 'POST', path: '/api/decisions/undo' }, // undoAskSchema -> dayReviewSchema
  draftMessage: { method: 'GET', path: '/api/days/:day/message/:readingId' }, // -> draftMessageSchema
  exportDay: { method: 'GET', path: '/api/days/:day/gauges.geojson' }, // -> exportedDaySchema
  exportAccepted: { method: 'GET', path: '/api/accepted.csv' }, // exportAcceptedAskSchema as query -> text/csv
  readRule: { method: 'GET', path: '/api/rule' }, // -> ruleSchema
  setRule: { method: 'POST', path: '/api/rule' }, // setRuleAskSchema -> ruleSchema
  previewRule: { method: 'GET', path: '/api/rule/preview' }, // previewRuleAskSchema as query -> rulePreviewSchema, or lines
  networkHabits: { method: 'GET', path: '/api/habits' }, // -> networkHabitsSchema
  gaugeHabits: { method: 'GET', path: '/api/habits/:gauge' }, // -> gaugeHabitsSchema
  mapLayers: { method: 'GET', path: '/api/map' }, // -> mapLayersSchema
} as const
