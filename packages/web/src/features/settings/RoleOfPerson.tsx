import type { Person } from '@gaugewright/contract'
import { useState } from 'react'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { RoleSelect } from './RoleSelect.tsx'
import type { AccessDesk } from './useAccess.ts'

/** A person's role. It changes when that is confirmed, since a list can be moved by an arrow key or a wheel unseen. */
export function RoleOfPerson({ desk, person }: { desk: AccessDesk; person: Person }) {
  const { words } = useWords()
  const { access: own } = words
  const [chosen, setChosen] = useState(person.role)
  return (
    <div>
      <RoleSelect label={fill(own.roleOf, { name: person.name })} isLabelHidden value={chosen} onChange={setChosen} />
      {chosen === person.role ? null : (
        <Button
          look="primary"
          aria-label={fill(own.changeRoleOf, { name: person.name })}
          onClick={() =>
            desk.role.mutate({ personId: person.id, role: chosen }, { onError: () => setChosen(person.role) })
          }
        >
          {own.changeRole}
        </Button>
      )}
    </div>
  )
}
