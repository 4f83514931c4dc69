/** People who offer to observe in the invented basin, at every state, and what was exchanged with them. */
export interface ScenarioOffer {
  name: string
  mail: string | null
  phone: string | null
  language: 'en' | 'es'
  place: string
  yard: 'open' | 'some trees' | 'built-up' | 'other'
  yardWords: string
  readingTime: string | null
  hours: string
  /** Days before this morning on which the offer came. */
  daysAgo: number
  /** States that were reached, with the days before this morning. */
  states: {
    state: 'answered' | 'site agreed' | 'gauge in hand' | 'trained' | 'reading' | 'closed'
    daysAgo: number
    why: string
  }[]
  contacts: { way: 'call' | 'visit' | 'mail received' | 'note'; text: string; daysAgo: number }[]
  /** Place in `Scenario.gauges` of the gauge that was given; null where none was. */
  gauge: number | null
  /** Openness of a yard that was drawn; null where none was. */
  yardOpenness: number | null
}

type Told = Pick<ScenarioOffer, 'place' | 'yard' | 'yardWords' | 'hours'> & Partial<ScenarioOffer>

/** Nobody real: mail addresses end in a name that nobody can have (RFC 2606). */
const told: Told[] = [
  {
    place: 'The last house before the weir',
    yard: 'some trees',
    yardWords: 'Two apple trees, a low fence.',
    hours: 'Always up by six.',
    daysAgo: 0.6,
  },
  {
    place: 'Upper Sallow, by the chapel',
    yard: 'open',
    yardWords: 'Sheep pasture behind the house.',
    hours: '',
    daysAgo: 4.2,
    mail: null,
    phone: '555 0142',
  },
  {
    place: 'Quarry Lane, the blue gate',
    yard: 'built-up',
    yardWords: 'Small courtyard, walls on three sides.',
    hours: 'Weekends a little later.',
    daysAgo: 9,
    states: [{ state: 'answered', daysAgo: 8.4, why: '' }],
    contacts: [{ way: 'call', text: 'Glad to help; will draw the yard this week.', daysAgo: 8.4 }],
  },
  {
    place: 'Between the two bridges',
    yard: 'other',
    yardWords: 'Allotment with a shed.',
    hours: '',
    daysAgo: 31,
    language: 'es',
    states: [{ state: 'answered', daysAgo: 30.5, why: '' }],
    contacts: [{ way: 'mail received', text: 'Away for two weeks, then the drawing follows.', daysAgo: 26 }],
    yardOpenness: 0.35,
  },
  {
    place: 'High Fold farm',
    yard: 'open',
    yardWords: 'Nothing but grass to the west.',
    hours: 'Seven is milking time; half past six is fine.',
    daysAgo: 24,
    states: [
      { state: 'answered', daysAgo: 23.6, why: '' },
      { state: 'site agreed', daysAgo: 11, why: '' },
    ],
    contacts: [{ way: 'visit', text: 'Looked at the yard together; the paddock is best.', daysAgo: 11 }],
    yardOpenness: 0.9,
  },
  {
    place: 'Old schoolhouse',
    yard: 'some trees',
    yardWords: 'A row of limes to the north.',
    hours: '',
    daysAgo: 40,
    states: [
      { state: 'answered', daysAgo: 39.8, why: '' },
      { state: 'site agreed', daysAgo: 30, why: '' },
      { state: 'gauge in hand', daysAgo: 5, why: '' },
    ],
    contacts: [{ way: 'note', text: 'The gauge was collected at the fair.', daysAgo: 5 }],
    gauge: -1,
    yardOpenness: 0.6,
  },
  {
    place: 'Mill Reach 3',
    yard: 'open',
    yardWords: 'Lawn to the river.',
    hours: '',
    daysAgo: 75,
    states: [
      { state: 'answered', daysAgo: 74.7, why: '' },
      { state: 'site agreed', daysAgo: 66, why: '' },
      { state: 'gauge in hand', daysAgo: 60, why: '' },
      { state: 'trained', daysAgo: 58, why: '' },
      { state: 'reading', daysAgo: 57, why: '' },
    ],
    contacts: [{ way: 'call', text: 'The first reading on the morning after.', daysAgo: 57 }],
    gauge: -2,
    yardOpenness: 0.75,
  },
  {
    place: 'Station Road, third floor',
    yard: 'built-up',
    yardWords: 'A balcony.',
    hours: '',
    daysAgo: 90,
    states: [
      { state: 'closed', daysAgo: 89, why: 'No ground to stand a gauge on; thanked, and told of the school’s gauge.' },
    ],
    contacts: [{ way: 'call', text: 'Understood, and will help at the school.', daysAgo: 89 }],
  },
]

/**
 * @param names        of people who offer, at least eight
 * @param gaugeOf      turns -1, -2 into places of gauges
 */
export function inventOffers(names: readonly string[], gaugeOf: (place: number) => number): ScenarioOffer[] {
  return told.map((one, index) => {
    const name = names[index] ?? `Person ${index + 1}`
    return {
      name,
      mail: inventMail(name),
      phone: null,
      language: 'en',
      readingTime: '07:00',
      daysAgo: 1,
      states: [],
      contacts: [],
      yardOpenness: null,
      ...one,
      gauge: one.gauge === undefined || one.gauge === null ? null : gaugeOf(one.gauge),
    }
  })
}

/** An address that nobody can have, with the letters of a name. */
export function inventMail(name: string): string {
  const letters = name.normalize('NFD').replace(/[^A-Za-z ]/g, '')
  return `${letters.toLowerCase().replaceAll(' ', '.')}@people.example`
}
