import type { YardPlan } from '@gaugewright/science'

/** False for photos that were sent alone, before anybody drew the yard: they are kept, and are no survey of it yet. */
export function isDrawn({ outline, obstacles, gauge }: YardPlan): boolean {
  return outline.length > 0 || obstacles.length > 0 || gauge !== null
}
