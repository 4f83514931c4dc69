import { Dialog } from '../../ui/Dialog.tsx'
import { Key } from '../../ui/Key.tsx'
import { screens } from '../../ui/screens.ts'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './KeysDialog.module.css'
import { keyList, keyName } from './keys.ts'

type Props = { singleKeysOn: boolean; onSingleKeys: (on: boolean) => void; onClose: () => void }

export function KeysDialog({ singleKeysOn, onSingleKeys, onClose }: Props) {
  const { words } = useWords()
  return (
    <Dialog title={words.keysTitle} closeLabel={words.close} onClose={onClose} wide>
      <div className={styles.groups}>
        {(['decide', 'move', 'look', 'help'] as const).map((group) => (
          <section key={group}>
            <h3>{words.keyGroups[group]}</h3>
            <dl>
              {keyList
                .filter((entry) => entry.group === group)
                .map(({ act, keys }) => (
                  <div key={act}>
                    <dt>
                      {keys.map((key) => (
                        <span key={key}>
                          <Key>{keyName(key)}</Key>
                          <span className="sr-only">{key} </span>
                        </span>
                      ))}
                    </dt>
                    <dd>{words.keys[act]}</dd>
                  </div>
                ))}
            </dl>
          </section>
        ))}
        <section>
          <h3>{words.screensLabel}</h3>
          <dl>
            {screens.map(({ id, key }) => (
              <div key={id}>
                <dt>
                  <Key>{key}</Key>
                  <span className="sr-only">{key} </span>
                </dt>
                <dd>{words.screens[id]}</dd>
              </div>
            ))}
          </dl>
        </section>
      </div>
      <label className={styles.single}>
        <input type="checkbox" checked={singleKeysOn} onChange={(event) => onSingleKeys(event.target.checked)} />
        {words.singleKeys}
      </label>
      <p className={styles.note}>{words.singleKeysNote}</p>
    </Dialog>
  )
}
