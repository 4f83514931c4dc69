import { useWords } from '../../words/WordsContext.tsx'
import styles from './UrgentSection.module.css'
import type { UrgentDraft } from './urgentSettingsView.ts'

type Props = { draft: UrgentDraft; onChange: (part: Partial<UrgentDraft>) => void }

/** Off: nothing is sent until a person presses. On: what is grave and likely enough goes by itself. */
export function UrgentRule({ draft, onChange }: Props) {
  const { words } = useWords()
  const say = words.urgent.settings
  const { rule, destinations } = draft
  const put = (part: Partial<UrgentDraft['rule']>) => onChange({ rule: { ...rule, ...part } })
  return (
    <fieldset className={styles.rows}>
      <legend>{say.rule}</legend>
      <label className={styles.check}>
        <input type="radio" name="urgent-rule" checked={!rule.isOn} onChange={() => put({ isOn: false })} />
        {say.ruleOff}
      </label>
      <label className={styles.check}>
        <input
          type="radio"
          name="urgent-rule"
          checked={rule.isOn}
          disabled={destinations.length === 0}
          onChange={() => put({ isOn: true })}
        />
        {say.ruleOn} …
      </label>
      {rule.isOn ? (
        <div className={styles.row}>
          <label>
            {say.ruleOn}
            <select
              value={rule.atLeast}
              onChange={(event) => put({ atLeast: event.target.value as 'severe' | 'significant' })}
            >
              {(['severe', 'significant'] as const).map((level) => (
                <option key={level} value={level}>
                  {words.urgent.levels[level]}
                </option>
              ))}
            </select>
          </label>
          <label>
            {say.ruleOdds}
            <input inputMode="decimal" value={rule.odds} onChange={(event) => put({ odds: event.target.value })} />
          </label>
          <label>
            {say.ruleForm}
            <select
              value={rule.form}
              onChange={(event) => put({ form: event.target.value as 'storm report' | 'SHEF' })}
            >
              {(['storm report', 'SHEF'] as const).map((form) => (
                <option key={form} value={form}>
                  {words.urgent.forms[form]}
                </option>
              ))}
            </select>
          </label>
          <label>
            {say.ruleTo}
            <select value={rule.to} onChange={(event) => put({ to: event.target.value })}>
              {destinations.map(({ name }) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        </div>
      ) : null}
    </fieldset>
  )
}
