/**
 * A short rising tone of three notes, made here by WebAudio. Off until a person switches it on, which is the click that
 * browsers ask for; the choice is kept on this computer, and after a new start of the page waits for any click.
 */
const kept = 'gaugewright.urgentSound'
const noteHz = [659.25, 783.99, 987.77]
const noteS = 0.14

let context: AudioContext | null = null
const listeners = new Set<() => void>()

export type SoundState = 'off' | 'on' | 'waits' | 'fails'
let state: SoundState = readKept() ? 'waits' : 'off'

export function soundState(): SoundState {
  return state
}

export function onSoundState(listener: () => void): () => void {
  listeners.add(listener)
  return () => void listeners.delete(listener)
}

/** Within a click: browsers let no sound out otherwise. */
export async function switchSound(isOn: boolean): Promise<void> {
  try {
    localStorage.setItem(kept, isOn ? 'on' : 'off')
  } catch {
    // The choice then lasts as long as the page.
  }
  if (!isOn) return become('off')
  await wakeSound()
}

/** Lets sound out where it was switched on and waits for a click. */
export async function wakeSound(): Promise<void> {
  try {
    context ??= new AudioContext()
    await context.resume()
    become(context.state === 'running' ? 'on' : 'waits')
  } catch {
    become('fails')
  }
}

export function playSound(): void {
  if (state !== 'on' || context === null) return
  const { currentTime, destination } = context
  for (const [index, hz] of noteHz.entries()) {
    const from = currentTime + index * noteS
    const tone = context.createOscillator()
    const loudness = context.createGain()
    tone.frequency.value = hz
    loudness.gain.setValueAtTime(0, from)
    loudness.gain.linearRampToValueAtTime(0.25, from + 0.02)
    loudness.gain.exponentialRampToValueAtTime(0.001, from + noteS)
    tone.connect(loudness).connect(destination)
    tone.start(from)
    tone.stop(from + noteS)
  }
}

function become(next: SoundState): void {
  state = next
  for (const listener of [...listeners]) listener()
}

function readKept(): boolean {
  try {
    return localStorage.getItem(kept) === 'on'
  } catch {
    return false
  }
}
