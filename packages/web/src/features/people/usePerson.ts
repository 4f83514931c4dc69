import { useMutation, useQueryClient } from '@tanstack/react-query'
import { contactsKey, peopleKey } from '../../api/people.ts'

/** Something that is done about a person: afterwards the lists and the log are asked anew. */
export function usePersonAct<Ask, Answer>(act: (ask: Ask) => Promise<Answer>, about?: string) {
  const client = useQueryClient()
  return useMutation({
    mutationFn: act,
    onSuccess: async () => {
      await client.invalidateQueries({ queryKey: peopleKey })
      if (about !== undefined) await client.invalidateQueries({ queryKey: contactsKey(about) })
    },
  })
}
