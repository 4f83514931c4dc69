import { useSyncExternalStore } from 'react'
import { onSoundState, playSound, soundState, switchSound } from '../../hooks/urgentSound.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './UrgentPage.module.css'

/** Sound is off until it is switched on here; the click is the permission that the browser asks for. */
export function SoundSwitch() {
  const { words } = useWords()
  const say = words.urgent
  const state = useSyncExternalStore(onSoundState, soundState)
  const isOn = state === 'on' || state === 'waits'
  return (
    <div className={styles.sound}>
      <Choice
        label={say.sound}
        value={isOn ? 'on' : 'off'}
        options={[
          { value: 'off', label: say.soundOff },
          { value: 'on', label: say.soundOn },
        ]}
        onChange={(value) => void switchSound(value === 'on')}
      />
      {state === 'on' ? (
        <Button look="quiet" onClick={playSound}>
          {say.soundTry}
        </Button>
      ) : null}
      {state === 'waits' ? <p>{say.soundWaits}</p> : null}
      {state === 'fails' ? <p>{say.soundFails}</p> : null}
    </div>
  )
}
