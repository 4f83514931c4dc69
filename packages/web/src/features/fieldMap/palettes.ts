/**
 * Colour tables from published, perceptually even, colour-blind-safe sets. Sequential tables run dark to light, 16 even
 * samples (every 17th of 256 entries). Sources: navia and bilbao from Scientific colour maps 8 [Crameri2023] (MIT);
 * BrBG, 9 classes, from ColorBrewer 2 [Brewer2003] (Apache-2.0; the
 * same values as in d3-scale-chromatic 3).
 */
export const navia = [
  '#031327',
  '#052648',
  '#083b6a',
  '#105185',
  '#1e6491',
  '#28728f',
  '#327c89',
  '#3c8583',
  '#478f7d',
  '#549b75',
  '#65ab6c',
  '#7fbd68',
  '#a7d278',
  '#cde19b',
  '#e9ecbe',
  '#fcf4d9',
] as const

export const bilbao = [
  '#4c0001',
  '#65181b',
  '#7b2b31',
  '#8e3f46',
  '#9b5253',
  '#a06257',
  '#a46f5a',
  '#a77c5d',
  '#ab8860',
  '#ae9663',
  '#b5a772',
  '#bdb590',
  '#c4c0ac',
  '#cdcbc4',
  '#e1e1e1',
  '#ffffff',
] as const

/** Diverging: less (brown) to more (blue-green), white in the middle. */
export const brownToGreen = [
  '#8c510a',
  '#bf812d',
  '#dfc27d',
  '#f6e8c3',
  '#f5f5f5',
  '#c7eae5',
  '#80cdc1',
  '#35978f',
  '#01665e',
] as const

export type Rgb = readonly [number, number, number]

export function rgbOf(hex: string): Rgb {
  const n = Number.parseInt(hex.slice(1), 16)
  return [(n >> 16) & 255, (n >> 8) & 255, n & 255]
}

/** Colour at a share 0…1 of a table, straight between its entries. */
export function colourAt(table: readonly string[], share: number): Rgb {
  const at = Math.min(1, Math.max(0, share)) * (table.length - 1)
  const low = rgbOf(table[Math.floor(at)]!)
  const high = rgbOf(table[Math.ceil(at)]!)
  const t = at - Math.floor(at)
  return [0, 1, 2].map((i) => Math.round(low[i]! + t * (high[i]! - low[i]!))) as unknown as Rgb
}

export function cssOf([r, g, b]: Rgb): string {
  return `rgb(${r} ${g} ${b})`
}
