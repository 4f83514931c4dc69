import { createElement } from 'react'
import { printable } from '../paper/printable.ts'
import { SiteReport, type SiteReportProps } from './SiteReport.tsx'

/** @returns the page as one HTML file that needs no other */
export function printSiteReport(props: SiteReportProps): string {
  return printable(createElement(SiteReport, props))
}
