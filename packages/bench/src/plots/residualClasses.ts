/** Classes of a gauge's mean residual: colour, size and sign together, so that no one of them has to carry it alone. */
import type { GaugeResidual } from '../score/expectationShape.ts'
import { diverging } from './palette.ts'

/** Fewer days than these tell too little to draw. */
export const enoughDays = 10

/** Edges between the classes of (mean transform - 0.5). */
export const residualEdges = [-0.15, -0.09, -0.03, 0.03, 0.09, 0.15] as const

export interface ResidualClass {
  colour: string
  radius: number
}

export const residualClasses: readonly ResidualClass[] = diverging.map((colour, place) => ({
  colour,
  radius: [3.2, 4.2, 5.4, 6.8][Math.abs(place - 3)]!,
}))

export function residualClassOf({ meanPit }: Pick<GaugeResidual, 'meanPit'>): number {
  return residualEdges.filter((edge) => meanPit - 0.5 >= edge).length
}

/** The sign in the circles of a class; none in the middle one. */
export function signOf(place: number): '+' | '−' | null {
  return place === 3 ? null : place > 3 ? '+' : '−'
}

/** Whether the mean is farther from 0.5 than two standard errors of a mean of independent uniforms, whose variance is 1/12. */
export function isBeyondChance({ meanPit, count }: Pick<GaugeResidual, 'meanPit' | 'count'>): boolean {
  return Math.abs(meanPit - 0.5) > 2 / Math.sqrt(12 * count)
}
