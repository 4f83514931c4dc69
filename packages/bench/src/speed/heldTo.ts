/** Words before a program that hold it to the first cores of the machine; none when nothing is asked. */
export function heldTo(cores: number | undefined): string[] {
  if (cores === undefined) return []
  return ['taskset', '-c', cores === 1 ? '0' : `0-${cores - 1}`]
}
