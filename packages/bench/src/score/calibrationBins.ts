/** The odds of standing in a few wide bins, for reading at a glance; reliabilityBins.ts has finer ones with intervals. */

export interface CalibrationBin {
  from: number
  below: number
  count: number
  meanPStands: number
  standShare: number
}

const calibrationEdges = [0, 0.1, 0.5, 0.9, 0.99, 1.0000001]

/**
 * @param good   minus the odds of each good reading, any order
 * @param wrong  the same of each wrong one
 */
export function calibrationBins(good: Float64Array, wrong: Float64Array): CalibrationBin[] {
  const bins = calibrationEdges.slice(1).map((below, index) => ({
    from: calibrationEdges[index]!,
    below: Math.min(below, 1),
    count: 0,
    meanPStands: 0,
    standShare: 0,
  }))
  const enter = (suspicion: number, stands: number): void => {
    const pStands = -suspicion
    let index = 0
    while (index < bins.length - 1 && pStands >= calibrationEdges[index + 1]!) index++
    const bin = bins[index]!
    bin.count++
    bin.meanPStands += pStands
    bin.standShare += stands
  }
  for (const suspicion of good) enter(suspicion, 1)
  for (const suspicion of wrong) enter(suspicion, 0)
  for (const bin of bins) {
    bin.meanPStands /= bin.count
    bin.standShare /= bin.count
  }
  return bins
}
