/** @jsxRuntime automatic */
/** A sheet to print or to send: one file that needs no other, in the reader's language. A4 and letter paper both hold it. */
import type { ReactNode } from 'react'

export interface PaperProps {
  language: 'en' | 'es'
  title: string
  children: ReactNode
}

export function Paper({ language, title, children }: PaperProps) {
  return (
    <html lang={language}>
      <head>
        <meta charSet="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{title}</title>
        <style>{paperStyle}</style>
      </head>
      <body>{children}</body>
    </html>
  )
}

const paperStyle = `
@page { margin: 14mm 16mm; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 178mm; padding: 8mm 4mm; color: #1a1f24; background: #fff;
  font: 10.5pt/1.45 system-ui, -apple-system, "Segoe UI", "Noto Sans", sans-serif; }
h1 { font-size: 17pt; line-height: 1.2; margin: 0 0 2mm; }
h2 { font-size: 12pt; margin: 6mm 0 2mm; break-after: avoid; }
p { margin: 0 0 2.5mm; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th, td { text-align: left; padding: 1mm 2mm; border-bottom: 0.3pt solid #8a949e; vertical-align: top; }
td.number, th.number { text-align: right; }
svg { display: block; max-width: 100%; height: auto; }
figure { margin: 3mm 0; break-inside: avoid; }
figcaption, .small { font-size: 9pt; color: #3c464f; }
.caution { border: 0.8pt solid #1a1f24; padding: 2mm 3mm; break-inside: avoid; }
ul { margin: 0 0 2mm; padding-inline-start: 6mm; }
@media print { body { padding: 0; font-size: 9pt; line-height: 1.35; } h1 { font-size: 15pt; } h2 { font-size: 10.5pt; margin: 3.5mm 0 1.5mm; }
  p { margin-bottom: 1.6mm; } td, th { padding: 0.6mm 2mm; } .small, figcaption { font-size: 8pt; } }
`
