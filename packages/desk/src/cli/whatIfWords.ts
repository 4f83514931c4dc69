/** What the terminal says of a what-if, in the network's language. `{name}` is put in by printWhatIf. */
import type { ChangedFinding, DecideAsk } from '@gaugewright/contract'
import type { Language } from '@gaugewright/science'

interface WhatIfWords {
  head: Record<DecideAsk['verdict'], string>
  nothingDecided: string
  askedOnly: string
  mapMoves: string
  mapStays: string
  areas: string
  area: string
  before: string
  after: string
  noArea: string
  findings: string
  gauge: string
  name: string
  typed: string
  stands: string
  mistake: string
  more: string
  noFinding: string
  toDecide: string
  comes: string
  leaves: string
  mistakes: Record<ChangedFinding['before']['likeliest'], string>
}

const en: WhatIfWords = {
  head: { stands: 'if it stands', amended: 'if amended', asked: 'if asked', 'set aside': 'if set aside' },
  nothingDecided: 'Nothing was decided.',
  askedOnly: 'Asking changes nothing until the reading is decided.',
  mapMoves: 'The map would move by {amount} on average.',
  mapStays: 'The map would not change.',
  areas: 'Area means',
  area: 'area',
  before: 'now',
  after: 'then',
  noArea: 'No area mean would change by as much as {amount}.',
  findings: 'What would be found of other readings',
  gauge: 'gauge',
  name: 'name',
  typed: 'typed {unit}',
  stands: 'stands',
  mistake: 'likeliest mistake',
  more: 'and {count} more',
  noFinding: 'Nothing else would be found of other readings.',
  toDecide: 'To decide: {before} now, {after} then.',
  comes: 'comes onto the docket',
  leaves: 'leaves the docket',
  mistakes: {
    decimal: 'decimal point slipped',
    unit: 'wrong unit',
    day: 'belongs to another day',
    carried: 'total over several days',
    'first-fill-lost': 'first full tube forgotten',
    'first-fill-only': 'overflow not counted',
    'false-zero': 'zero without a look',
    wetted: 'wetted by something else',
    transposed: 'digits swapped',
    repeated: 'earlier amount repeated',
    other: 'something else',
  },
}

const es: WhatIfWords = {
  head: {
    stands: 'si se da por válida',
    amended: 'si se enmienda',
    asked: 'si se pregunta',
    'set aside': 'si se aparta',
  },
  nothingDecided: 'No se decidió nada.',
  askedOnly: 'Preguntar no cambia nada mientras no se decida la lectura.',
  mapMoves: 'El mapa se movería {amount} en promedio.',
  mapStays: 'El mapa no cambiaría.',
  areas: 'Medias comarcales',
  area: 'comarca',
  before: 'ahora',
  after: 'después',
  noArea: 'Ninguna media comarcal cambiaría ni {amount}.',
  findings: 'Lo que se vería en otras lecturas',
  gauge: 'código',
  name: 'pluviómetro',
  typed: 'escrito {unit}',
  stands: 'válida',
  mistake: 'error más probable',
  more: 'y {count} más',
  noFinding: 'En las otras lecturas no se vería nada distinto.',
  toDecide: 'Por decidir: {before} ahora, {after} después.',
  comes: 'pasa a estar por decidir',
  leaves: 'deja de estar por decidir',
  mistakes: {
    decimal: 'coma decimal corrida',
    unit: 'unidad equivocada',
    day: 'pertenece a otro día',
    carried: 'total de varios días',
    'first-fill-lost': 'falta el primer tubo lleno',
    'first-fill-only': 'no se contó el rebose',
    'false-zero': 'cero sin mirar',
    wetted: 'mojado por otra causa',
    transposed: 'cifras cambiadas',
    repeated: 'se repitió la cantidad anterior',
    other: 'otra causa',
  },
}

export const whatIfWords: Record<Language, WhatIfWords> = { en, es }
