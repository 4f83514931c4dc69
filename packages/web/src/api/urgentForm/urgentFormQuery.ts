import { routes, type UrgentForm } from '@gaugewright/contract'
import { askDesk } from '../askDesk.ts'
import { keepForm } from './urgentStore.ts'

/**
 * Asks whose gauge it is and whom to call, and keeps the answer on the phone for the hour without a signal. To be asked
 * whenever the observer's page is opened, so that the form is ready when it hails.
 * @param gauge  code; empty for the asker's own
 * @throws {ProblemError}
 */
export async function askUrgentForm(gauge: string): Promise<UrgentForm> {
  const query = gauge === '' ? '' : `?gauge=${encodeURIComponent(gauge)}`
  const form = await askDesk<UrgentForm>(`${routes.urgentForm.path}${query}`)
  await keepForm(gauge, form)
  return form
}
