/** Add a line through points to a path. */
export function drawLine(path: Path2D, points: readonly (readonly [number, number])[]): void {
  for (const [i, [x, y]] of points.entries()) {
    if (i === 0) path.moveTo(x, y)
    else path.lineTo(x, y)
  }
}
