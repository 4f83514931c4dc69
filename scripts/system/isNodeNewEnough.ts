/** The floor of docs/decisions on Node versions. */
export const oldestNode = { major: 20, minor: 19 }

/** @param version such as `20.19.0`, without a letter before it */
export function isNodeNewEnough(version: string): boolean {
  const [major = 0, minor = 0] = version.split('.').map(Number)
  return major > oldestNode.major || (major === oldestNode.major && minor >= oldestNode.minor)
}
