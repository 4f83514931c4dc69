import type { Destination } from '@gaugewright/contract'
import { Button } from '../../ui/Button.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './UrgentSection.module.css'
import type { UrgentDraft } from './urgentSettingsView.ts'

type Props = { draft: UrgentDraft; onChange: (part: Partial<UrgentDraft>) => void }
const ways = ['file', 'mail', 'webhook'] as const
const mostDestinations = 20

/** Where reports may be passed on to; nothing goes anywhere else. */
export function UrgentDestinations({ draft, onChange }: Props) {
  const { words } = useWords()
  const say = words.urgent.settings
  const { destinations } = draft
  const put = (index: number, part: Partial<Destination>) =>
    onChange({ destinations: destinations.map((row, at) => (at === index ? { ...row, ...part } : row)) })
  return (
    <fieldset className={styles.rows}>
      <legend>{say.destinations}</legend>
      {destinations.map(({ name, way, to }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row has no other identity while its name is typed
        <div key={index} className={styles.row}>
          <label>
            {say.destinationName}
            <input maxLength={60} value={name} onChange={(event) => put(index, { name: event.target.value })} />
          </label>
          <label>
            {say.destinationWay}
            <select value={way} onChange={(event) => put(index, { way: event.target.value as Destination['way'] })}>
              {ways.map((one) => (
                <option key={one} value={one}>
                  {say.ways[one]}
                </option>
              ))}
            </select>
          </label>
          <label className={styles.wide}>
            {say.destinationTo}
            <input maxLength={500} value={to} onChange={(event) => put(index, { to: event.target.value })} />
          </label>
          <Button
            look="icon"
            aria-label={fill(say.remove, { name })}
            onClick={() => onChange({ destinations: destinations.filter((_, at) => at !== index) })}
          >
            ×
          </Button>
        </div>
      ))}
      <div>
        <Button
          disabled={destinations.length >= mostDestinations}
          onClick={() => onChange({ destinations: [...destinations, { name: '', way: 'mail', to: '' }] })}
        >
          {say.add}
        </Button>
      </div>
    </fieldset>
  )
}
