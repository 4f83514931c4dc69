/** How a decision names the rule that made it: with the threshold used, so that a later setting changes nothing in it. */
export function ruleName(letStandAt: number | null): string {
  return letStandAt === null ? 'let none stand' : `let stand at ${letStandAt}`
}

/** The threshold in such a name; null where there is none. */
export function letStandAtOfRule(rule: string): number | null {
  const found = /^let stand at (0?\.\d+)$/.exec(rule)
  return found === null ? null : Number(found[1])
}
