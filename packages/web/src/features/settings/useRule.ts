import type { Rule, RulePoint, RuleSetting } from '@gaugewright/contract'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { postRule, ruleKey, ruleQuery } from '../../api/rule.ts'
import { placeForYear, placeOf } from './ruleView.ts'
import { type LookBack, useRulePreview } from './useRulePreview.ts'

/** Where the slider stands before anything was set: a rule that leaves few readings and lets few through. */
const FIRST_LET_STAND_AT = 0.98

/** What is being chosen; null fields follow what is in force. */
type Draft = { isOn: boolean | null; letStandAt: number | null; why: string }
const untouched: Draft = { isOn: null, letStandAt: null, why: '' }

export type RuleDesk = ReturnType<typeof useRule>

/** The rule in force, the one that is being chosen, and what that one would do. */
export function useRule() {
  const client = useQueryClient()
  const rule = useQuery(ruleQuery)
  const [lookBack, setLookBack] = useState<LookBack>('year')
  const { preview, progress } = useRulePreview(lookBack)
  const [draft, setDraft] = useState(untouched)
  const [wishMissed, setWishMissed] = useState(false)

  const points: readonly RulePoint[] = preview.data?.points ?? []
  const inForce = rule.data?.letStandAt ?? null
  const isOn = draft.isOn ?? inForce !== null
  const letStandAt = draft.letStandAt ?? inForce ?? FIRST_LET_STAND_AT
  const chosen = isOn ? letStandAt : null
  const docketFrom = chosen ?? rule.data?.docketBelow ?? FIRST_LET_STAND_AT

  const set = useMutation({
    mutationFn: postRule,
    onSuccess: (answer: Rule) => {
      client.setQueryData(ruleKey, answer)
      setDraft(untouched)
      // The rule acts when a day is next looked at.
      for (const queryKey of [['review'], ['evidence'], ['whatIf']]) void client.invalidateQueries({ queryKey })
    },
  })
  const choose = (next: Partial<Draft>) => {
    set.reset()
    setWishMissed(false)
    setDraft((now) => ({ ...now, ...next }))
  }
  const wish = (wrongAYear: number) => {
    const place = placeForYear(points, wrongAYear)
    choose(place === null ? {} : { isOn: true, letStandAt: points[place]?.letStandAt ?? null })
    setWishMissed(place === null)
  }
  return {
    rule,
    preview,
    progress,
    lookBack,
    setLookBack,
    points,
    inForce,
    isOn,
    letStandAt,
    chosen,
    isChanged: chosen !== inForce,
    /** The point of the curve for what is chosen; with no rule, for what comes to the docket then. */
    place: placeOf(points, docketFrom),
    placeInForce: inForce === null ? null : placeOf(points, inForce),
    why: draft.why,
    choose,
    choosePlace: (place: number) => choose({ isOn: true, letStandAt: points[place]?.letStandAt ?? letStandAt }),
    wish,
    wishMissed,
    isDone: set.isSuccess,
    isSetting: set.isPending,
    setError: set.error,
    set: () => set.mutate({ letStandAt: chosen, why: draft.why.trim(), by: 'coordinator' }),
    /** An old setting comes back as what is being chosen, with a reason that can be changed. */
    takeUp: (setting: RuleSetting, why: string) =>
      choose({ isOn: setting.letStandAt !== null, letStandAt: setting.letStandAt, why }),
  }
}
