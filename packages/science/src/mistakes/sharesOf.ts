/** Which mistakes a network makes: the usual shares, or its own where decisions have told. */
import type { Model } from '../model/model.ts'
import type { Mistake } from './mistake.ts'
import { mistakeShare } from './rates.ts'

/** Share of each mistake in all mistakes; sums to 1. */
export type MistakeShares = Readonly<Record<Mistake, number>>

/** A model that holds its network's own shares; made by withDecidedRates. */
export interface ModelWithShares extends Model {
  mistakeShare: MistakeShares
}

export function sharesOf(model: Model): MistakeShares {
  return (model as Partial<ModelWithShares>).mistakeShare ?? mistakeShare
}

/** Of the mistakes, the share that shows on a dry day: water that is not rain, and amounts out of nowhere. */
export function dryShareOf(shares: MistakeShares): number {
  return shares.wetted + shares.other
}
