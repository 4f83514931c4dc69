/** Everything on the plan as a list, and the form of what is chosen: the way of those who do not point. */

import { obstacleName } from '@gaugewright/drawings'
import { isDrawn } from '@gaugewright/science'
import { sitingWords } from '../../words/sitingWords.ts'
import { ItemForm, type ItemFormProps } from './ItemForm.tsx'
import styles from './SitePage.module.css'

export function ItemsPart({ edited, chosen, onChoose, language, unit }: ItemFormProps) {
  const words = sitingWords[language]
  const { plan } = edited
  return (
    <section className={styles.items} aria-label={words.items}>
      <h3>{words.items}</h3>
      {!isDrawn(plan) ? <p className={styles.soft}>{words.noItems}</p> : null}
      <ul>
        {plan.gauge === null ? null : (
          <ItemButton
            label={words.gauge}
            isChosen={chosen?.kind === 'gauge'}
            onChoose={() => onChoose({ kind: 'gauge' })}
          />
        )}
        {plan.outline.length === 0 ? null : (
          <ItemButton
            label={words.outline}
            isChosen={chosen?.kind === 'outline'}
            onChoose={() => onChoose({ kind: 'outline' })}
          />
        )}
        {plan.obstacles.map(({ id }) => (
          <ItemButton
            key={id}
            label={obstacleName(plan, id, language)}
            isChosen={chosen?.kind === 'obstacle' && chosen.id === id}
            onChoose={() => onChoose({ kind: 'obstacle', id })}
          />
        ))}
        {plan.hazards.map(({ id }) => (
          <ItemButton
            key={id}
            label={obstacleName(plan, id, language)}
            isChosen={chosen?.kind === 'hazard' && chosen.id === id}
            onChoose={() => onChoose({ kind: 'hazard', id })}
          />
        ))}
      </ul>
      <ItemForm edited={edited} chosen={chosen} onChoose={onChoose} language={language} unit={unit} />
    </section>
  )
}

function ItemButton({ label, isChosen, onChoose }: { label: string; isChosen: boolean; onChoose: () => void }) {
  return (
    <li>
      <button type="button" className={styles.item} aria-pressed={isChosen} onClick={onChoose}>
        {label}
      </button>
    </li>
  )
}
