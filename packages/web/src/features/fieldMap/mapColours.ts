/** Colours of the canvas, for a light and a dark page. They repeat tokens.css, which a canvas cannot read. */
export type MapColours = {
  paper: string
  land: string
  ink: string
  halo: string
  relief: string
  boundary: string
  county: string
  river: string
  town: string
  isohyet: string
  doubt: string
  accent: string
}

const light: MapColours = {
  paper: '#dfe5e2',
  land: '#fbfcfa',
  ink: '#14211f',
  halo: 'rgb(255 255 255 / 0.88)',
  relief: 'rgb(60 48 30)',
  boundary: '#56635e',
  county: 'rgb(60 72 67 / 0.55)',
  river: 'rgb(24 96 150 / 0.6)',
  town: '#38453f',
  isohyet: 'rgb(10 32 48 / 0.8)',
  doubt: '#c25a00',
  accent: '#b0005e',
}
const dark: MapColours = {
  paper: '#0a1012',
  land: '#182225',
  ink: '#f0f5f2',
  halo: 'rgb(8 14 16 / 0.85)',
  relief: 'rgb(235 240 230)',
  boundary: '#8b9c97',
  county: 'rgb(190 205 198 / 0.45)',
  river: 'rgb(120 180 225 / 0.5)',
  town: '#c2cfca',
  isohyet: 'rgb(235 245 240 / 0.75)',
  doubt: '#ffb257',
  accent: '#ff8cc6',
}

export function mapColours(isDark: boolean): MapColours {
  return isDark ? dark : light
}
