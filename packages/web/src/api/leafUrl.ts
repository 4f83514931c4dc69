import { routes } from '@gaugewright/contract'

/** Where the page of a gauge's month `2026-05` or year `2026` is. */
export function leafUrl(gauge: string, period: string): string {
  return `${routes.leaf.path}?${new URLSearchParams({ gauge, period })}`
}
