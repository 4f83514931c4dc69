/** The keys of Today: one key, one act. Shown as a list on `?`; every act has a button too. */
export type KeyAct =
  | 'stands'
  | 'amend'
  | 'amendNow'
  | 'ask'
  | 'setAside'
  | 'undo'
  | 'reason'
  | 'next'
  | 'previous'
  | 'previousDay'
  | 'nextDay'
  | 'latestDay'
  | 'search'
  | 'list'
  | 'measure'
  | 'isohyets'
  | 'whatIf'
  | 'whatIfNext'
  | 'focusMap'
  | 'help'
  | 'close'

export type KeyGroup = 'decide' | 'move' | 'look' | 'help'

export const keyList: readonly { act: KeyAct; keys: readonly string[]; group: KeyGroup }[] = [
  { act: 'stands', keys: ['s'], group: 'decide' },
  { act: 'amend', keys: ['a'], group: 'decide' },
  { act: 'amendNow', keys: ['A'], group: 'decide' },
  { act: 'ask', keys: ['q'], group: 'decide' },
  { act: 'setAside', keys: ['x'], group: 'decide' },
  { act: 'undo', keys: ['u'], group: 'decide' },
  { act: 'reason', keys: ['r'], group: 'decide' },
  { act: 'next', keys: ['j', 'ArrowDown'], group: 'move' },
  { act: 'previous', keys: ['k', 'ArrowUp'], group: 'move' },
  { act: 'previousDay', keys: ['['], group: 'move' },
  { act: 'nextDay', keys: [']'], group: 'move' },
  { act: 'latestDay', keys: ['t'], group: 'move' },
  { act: 'search', keys: ['/'], group: 'move' },
  { act: 'list', keys: ['l'], group: 'move' },
  { act: 'measure', keys: ['m'], group: 'look' },
  { act: 'isohyets', keys: ['i'], group: 'look' },
  { act: 'whatIf', keys: ['w'], group: 'look' },
  { act: 'whatIfNext', keys: ['W'], group: 'look' },
  { act: 'focusMap', keys: ['g'], group: 'look' },
  { act: 'help', keys: ['?'], group: 'help' },
  { act: 'close', keys: ['Escape'], group: 'help' },
]

const acts = new Map(keyList.flatMap(({ act, keys }) => keys.map((key) => [key, act] as const)))
const names: Record<string, string> = { ArrowDown: '↓', ArrowUp: '↑', Escape: 'Esc' }

export function keyName(key: string): string {
  return (
    names[key] ??
    (/^[A-Z]$/.test(key) ? `⇧ ${key}` : key.length === 1 && key >= 'a' && key <= 'z' ? key.toUpperCase() : key)
  )
}

/** The act of a pressed key, or null: chords with Ctrl, Alt or Meta belong to the browser. Caps Lock changes nothing. */
export function actOfKey(
  press: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'altKey' | 'metaKey' | 'shiftKey'>,
): KeyAct | null {
  if (press.ctrlKey || press.metaKey) return null
  // AltGr types [ and ] on many keyboards and reports itself as Alt: only letters with Alt are the browser's.
  if (press.altKey && !['[', ']', '/', '?'].includes(press.key)) return null
  const capsLocked = /^[A-Z]$/.test(press.key) && !press.shiftKey
  return acts.get(capsLocked ? press.key.toLowerCase() : press.key) ?? null
}
