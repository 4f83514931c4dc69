import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { askRulePreview, type Progress } from '../../api/rule.ts'

export const lookBacks = { month: 30, season: 90, year: null } as const
export type LookBack = keyof typeof lookBacks

/** What the rule would have met on the mornings looked back on, and how far the desk is while it works that out. */
export function useRulePreview(lookBack: LookBack) {
  const [progress, setProgress] = useState<Progress | null>(null)
  const preview = useQuery({
    queryKey: ['rule', 'preview', lookBack],
    queryFn: async ({ signal }) => {
      try {
        return await askRulePreview(lookBacks[lookBack], setProgress, signal)
      } finally {
        setProgress(null)
      }
    },
    placeholderData: keepPreviousData,
    staleTime: 5 * 60_000,
  })
  return { preview, progress }
}
