/** Colours of the plots. On their own light ground, so that they read alike on a white page and on a dark one. */

export const ground = '#ffffff'
export const ink = '#1f2328'
/** For words of less weight; 7:1 on the ground. */
export const quietInk = '#50565d'
export const gridInk = '#d8dce0'

/** Series, told apart by hue for colour-blind eyes [OkabeIto2008], and each by a mark or a dash of its own besides. */
export const series = {
  dayAfter: { label: 'ours, day after', colour: '#0072b2', symbol: 'circle', dash: undefined },
  sameMorning: { label: 'ours, same morning', colour: '#d55e00', symbol: 'square', dash: '7,3' },
  published: { label: 'best published check', colour: '#50565d', symbol: 'times', dash: '2,3' },
} as const

/** PuOr in 7 classes [Brewer2003], from less than expected to more: safe for colour-blind eyes, pale in the middle. */
export const diverging = ['#542788', '#998ec3', '#d8daeb', '#f7f7f7', '#fee0b6', '#f1a340', '#b35806'] as const
