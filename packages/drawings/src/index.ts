// Contents: what is drawn alike on a screen and on paper. Named exports only.

// Gauges and drills
export { GaugeTube, type GaugeTubeProps, heightMm } from './gauge/GaugeTube.tsx'
export { HailDrawing } from './gauge/HailDrawing.tsx'
export { SpotsDrawing } from './gauge/SpotsDrawing.tsx'
// Pages for observers
export type { LeafProps } from './leaf/Leaf.tsx'
export type { NetworkLetterProps } from './leaf/NetworkLetter.tsx'
export { printLeaf, printNetworkLetter } from './leaf/printLeaf.ts'
export type { DayOfRain } from './leaf/RainByDay.tsx'
// Sites
export { type LengthUnit, lengthNumber, lengthText, lengthUnitOf, metresPer } from './siting/length.ts'
export { PlanDrawing, type PlanFrame, PlanShapes, pathOf, planFrame, scaleBarM } from './siting/PlanDrawing.tsx'
export { printSiteReport } from './siting/printSiteReport.ts'
export type { SiteReportProps } from './siting/SiteReport.tsx'
export { SkylineDrawing } from './siting/SkylineDrawing.tsx'
export {
  bettermentText,
  degrees,
  faultText,
  hazardText,
  obstacleName,
  ratioText,
  reasonText,
  rimText,
  type SiteLanguage,
  windText,
} from './siting/siteSentences.ts'
export { type SiteWords, siteWords, told } from './siting/siteWords.ts'
