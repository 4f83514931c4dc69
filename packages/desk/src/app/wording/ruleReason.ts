/** Why the rule decided, or took its decision back: the reason kept beside it, in the network's language. */
import type { NetworkSettings } from '../../ports/ledger.ts'

type Language = NetworkSettings['language']

export function ruleReason(standsOdds: number, language: Language): string {
  const sure = percentSure(standsOdds, language)
  return language === 'es' ? `${sure} de seguridad` : `${sure} sure`
}

/** @param letStandAt  of the rule now in force; null where it was switched off */
export function takenBackReason(standsOdds: number, letStandAt: number | null, language: Language): string {
  if (letStandAt === null) return language === 'es' ? 'la regla está apagada' : 'the rule is off'
  const sure = percentSure(standsOdds, language)
  const asked = percentSure(letStandAt, language)
  return language === 'es' ? `${sure} de seguridad; la regla pide ${asked}` : `${sure} sure; the rule asks for ${asked}`
}

/** Rounded down, so that what is not certain is never called so: 0.99996 is 99.99 %. */
function percentSure(odds: number, language: Language): string {
  const percent = (Math.floor(odds * 10_000 + 1e-6) / 100).toFixed(2)
  return `${language === 'es' ? percent.replace('.', ',') : percent} %`
}
