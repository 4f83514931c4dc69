/** Sittings from the journal, and what follows from them. */
import type { DrillSettings, DrillsOfPerson, Sitting } from '@gaugewright/contract'
import { drillFactor, sittingResult, untrainedFactor } from '@gaugewright/science'
import type { JournalEntry } from '../../ports/journal.ts'
import type { Ports } from '../../ports/ports.ts'
import { type Read, standing } from '../people/journalBody.ts'

const YEAR_MS = 365 * 86_400_000
/** Sittings older than this say little about today. */
const LOOK_BACK_MS = 3 * YEAR_MS

export const usualDrillSettings: DrillSettings = { passMark: 0.8, isRequired: false }

export async function drillSettings(ports: Pick<Ports, 'journal'>, networkId: string): Promise<DrillSettings> {
  const set = standing(await ports.journal.ofKinds(networkId, ['drill settings']), 'drill settings')
  return set.at(-1)?.body ?? usualDrillSettings
}

export function sittingFrom({ entry, body }: Read<'sitting'>): Sitting {
  const result = sittingResult(body.answers, body.passMark)
  return {
    id: entry.id,
    atUtc: entry.atUtc,
    rightShare: result.rightShare,
    isPassed: result.isPassed,
    answers: body.answers.map(({ skill, isRight, reason }) => ({ skill, isRight, reason })),
    skills: result.skills,
    repeat: result.repeat,
  }
}

/** @param entries  about one person, oldest first */
export function drillsFrom(
  about: string,
  entries: readonly JournalEntry[],
  settings: DrillSettings,
  nowUtc: string,
): DrillsOfPerson {
  const sittings = standing(entries, 'sitting').map(sittingFrom).reverse()
  const passed = sittings.find(({ isPassed }) => isPassed)
  const asked = standing(entries, 'refresher asked').at(-1)
  const isAsked = asked !== undefined && (sittings[0] === undefined || sittings[0].atUtc < asked.entry.atUtc)
  const isOld = passed !== undefined && Date.parse(nowUtc) - Date.parse(passed.atUtc) > YEAR_MS
  return {
    about,
    settings,
    sittings,
    refresher: isAsked ? 'asked' : isOld ? 'yearly' : 'none',
    startingFactor: startingFactor(sittings, settings, nowUtc),
  }
}

/** Answers of the last years; somebody who was to pass and never did begins as untrained. */
function startingFactor(sittings: readonly Sitting[], settings: DrillSettings, nowUtc: string): number {
  const recent = sittings.filter(({ atUtc }) => Date.parse(nowUtc) - Date.parse(atUtc) < LOOK_BACK_MS)
  const answers = recent.flatMap((one) => one.answers)
  const missed = answers.filter(({ isRight }) => !isRight).length
  const factor = drillFactor(missed, answers.length)
  const isUntrained = settings.isRequired && answers.length > 0 && !recent.some(({ isPassed }) => isPassed)
  return isUntrained ? Math.max(factor, untrainedFactor()) : factor
}
