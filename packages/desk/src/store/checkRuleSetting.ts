import type { RuleSetting } from '../ports/ledger.ts'
import { LedgerError } from '../ports/ledgerError.ts'

/** @throws {LedgerError} RULE_NOT_VALID where the threshold is no odds that a reading could have */
export function checkRuleSetting({ letStandAt }: RuleSetting): void {
  if (letStandAt === null || (letStandAt > 0 && letStandAt < 1)) return
  throw new LedgerError(
    'RULE_NOT_VALID',
    `The rule is to let stand at odds of ${letStandAt}.`,
    'Give odds between 0 and 1, such as 0.98.',
  )
}
