/** How one gauge was answered over the last year: days, streaks, gaps, the hour of reading. */
import { type Actor, isAtLeast, type RollAsk, type RollOfGauge } from '@gaugewright/contract'
import { isoFromEpochDay, quantile, rollOverTime } from '@gaugewright/science'
import type { Ports } from '../ports/ports.ts'
import { type Answer, answered, refused } from './answer.ts'
import { pastOf, statesOf, stripOf } from './holding/pastOf.ts'
import { firstNetwork } from './urgent/firstNetwork.ts'

const DAYS = 371
const LEAST_HOURS = 10

export async function rollOfGauge(
  ports: Pick<Ports, 'ledger' | 'absences' | 'clock'>,
  ask: RollAsk & { actor: Actor },
): Promise<Answer<RollOfGauge>> {
  const network = await firstNetwork(ports)
  if (!network.ok) return network
  const { id: networkId, timeZone } = network.value
  const gauge = await ports.ledger.gauge(networkId, ask.gauge)
  if (gauge === null) {
    return refused('GAUGE_NOT_IN_NETWORK', `the gauge "${ask.gauge}"`, 'Give the code of a gauge of the network.')
  }
  if (!isAtLeast(ask.actor.role, 'viewer') && !ask.actor.gauges.includes(gauge.id)) {
    return refused('GAUGE_NOT_YOURS', `the roll of ${gauge.code}`, 'Ask for a gauge that you read.')
  }
  const past = await pastOf(ports, network.value, DAYS)
  if (past === null) {
    return answered({
      code: gauge.code,
      lastDay: '',
      strip: '',
      answeredShare: null,
      currentStreak: 0,
      longestStreak: 0,
      longestGap: null,
      hour: null,
    })
  }
  const states = statesOf(
    past,
    past.gauges.findIndex(({ id }) => id === gauge.id),
  )
  const { answeredShare, currentStreak, longestStreak, gaps } = rollOverTime(states)
  const [from, to] = [isoFromEpochDay(past.firstDay), isoFromEpochDay(past.lastDay)]
  const clock = new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' })
  const minutes = (await ports.ledger.readingsOfGauge(networkId, gauge.id, from, to)).flatMap(({ endsAtUtc }) => {
    const [hour, minute] = clock.format(new Date(endsAtUtc)).split(':').map(Number)
    return [hour! * 60 + minute!]
  })
  const gap = gaps[0]
  return answered({
    code: gauge.code,
    lastDay: to,
    strip: stripOf(states),
    answeredShare,
    currentStreak,
    longestStreak,
    longestGap: gap === undefined ? null : { firstDay: isoFromEpochDay(past.firstDay + gap.from), days: gap.days },
    hour:
      minutes.length < LEAST_HOURS
        ? null
        : { medianMin: quantile(minutes, 0.5), lowMin: quantile(minutes, 0.25), highMin: quantile(minutes, 0.75) },
  })
}
