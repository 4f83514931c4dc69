/**
 * The thresholds among which a rule is chosen: 0.5 to 0.9999, in steps that grow finer toward certainty, where the same
 * step changes more. Any other number between the two ends may be set as well, to four decimals.
 */
export const lowestLetStandAt = 0.5
export const highestLetStandAt = 0.9999

/** Rising. Steps of 0.01 up to 0.9, 0.001 up to 0.99, 0.0001 from there. */
export const ruleSteps: readonly number[] = steps()

function steps(): number[] {
  const found: number[] = []
  for (let tenThousandths = 5000; tenThousandths <= 9999; ) {
    found.push(tenThousandths / 10_000)
    tenThousandths += tenThousandths < 9000 ? 100 : tenThousandths < 9900 ? 10 : 1
  }
  return found
}

/** The lowest step that is no lower than wanted; null above the highest. */
export function ruleStepFrom(letStandAt: number): number | null {
  return ruleSteps.find((step) => step >= letStandAt - 1e-9) ?? null
}
