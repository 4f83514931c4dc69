// Contents: what is drawn alike on a screen and on paper. Named exports only.

// Paper
export { Paper, type PaperProps } from './paper/Paper.tsx'
export { printable } from './paper/printable.ts'
