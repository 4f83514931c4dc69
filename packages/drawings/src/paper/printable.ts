import type { ReactElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'

/** @returns a whole HTML document as text, from a `Paper`; text in it is escaped */
export function printable(paper: ReactElement): string {
  return `<!doctype html>${renderToStaticMarkup(paper)}\n`
}
