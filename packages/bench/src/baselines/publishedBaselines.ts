/** All published checks that ours is compared with, in the order of printing. */
import type { Baseline } from './baseline.ts'
import { gammaByNeighbourMean } from './gammaByNeighbourMean.ts'
import { neighbourQ, neighbourRatio } from './neighbourRatio.ts'
import { spatialCorroboration } from './spatialCorroboration.ts'
import { spatialRegression } from './spatialRegression.ts'
import { tenNeighbourModel } from './tenNeighbourModel.ts'

export const publishedBaselines: readonly Baseline[] = [
  spatialCorroboration,
  tenNeighbourModel,
  spatialRegression,
  gammaByNeighbourMean,
  neighbourQ,
  neighbourRatio,
]
