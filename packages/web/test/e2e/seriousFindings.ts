import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'

/**
 * What axe finds on a page that is serious or critical: the rule, and where it does not hold. The page is looked at in one
 * go, without the blank page that axe opens beside it for frames of other hosts, which no screen of ours has; that, and
 * leaving out the lists of what passed, makes it four times as fast.
 */
export async function seriousFindings(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode(true)
    .options({ resultTypes: ['violations'] })
    .analyze()
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`)
}
