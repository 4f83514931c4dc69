/** What is answered to whoever asks: a value, or a problem that a person can mend. Nothing expected is thrown. */
import type { Problem } from '@gaugewright/contract'

export type Answer<T> = { ok: true; value: T } | { ok: false; problem: Problem }
