import { type Role, roles } from '@gaugewright/contract'
import { useId } from 'react'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './AccessForms.module.css'

type Props = { label: string; isLabelHidden?: boolean; value: Role; onChange: (role: Role) => void }

/** One of the roles, each with what it may do. */
export function RoleSelect({ label, isLabelHidden = false, value, onChange }: Props) {
  const { words } = useWords()
  const { access: own } = words
  const hintId = useId()
  return (
    <div className={styles.field}>
      <label>
        <span className={isLabelHidden ? 'sr-only' : undefined}>{label}</span>
        <select
          value={value}
          aria-describedby={isLabelHidden ? undefined : hintId}
          onChange={(event) => {
            const role = roles.find((one) => one === event.target.value)
            if (role !== undefined) onChange(role)
          }}
        >
          {roles.map((role) => (
            <option key={role} value={role}>
              {own.roles[role]}
            </option>
          ))}
        </select>
      </label>
      {isLabelHidden ? null : <span id={hintId}>{own.roleHints[value]}</span>}
    </div>
  )
}
