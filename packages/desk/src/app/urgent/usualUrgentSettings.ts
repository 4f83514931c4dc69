import type { UrgentSettings } from '@gaugewright/contract'
import { usualThresholds } from '@gaugewright/science'
import type { Ports } from '../../ports/ports.ts'

/** What holds until the office sets something: usual thresholds, nothing sent without a person, nowhere to send to. */
export const usualUrgentSettings: UrgentSettings = {
  ...usualThresholds,
  guidance: [...usualThresholds.guidance],
  emergencyNumber: null,
  officeName: '',
  stateCode: '',
  destinations: [],
  passOnRule: null,
}

export async function urgentSettingsOf(ports: Pick<Ports, 'urgent'>, networkId: string): Promise<UrgentSettings> {
  const set = (await ports.urgent.settings(networkId)).at(-1)?.settings
  return { ...usualUrgentSettings, ...set }
}
