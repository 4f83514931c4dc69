/** A table without lines, as the terminal shows lists. */
import Table from 'cli-table3'

export function plainTable(head: string[]): InstanceType<typeof Table> {
  const none = { top: '', 'top-mid': '', 'top-left': '', 'top-right': '', bottom: '', 'bottom-mid': '' }
  const gone = { 'bottom-left': '', 'bottom-right': '', left: ' ', 'left-mid': '', mid: '', 'mid-mid': '', right: '' }
  return new Table({
    head,
    chars: { ...none, ...gone, 'right-mid': '', middle: '  ' },
    style: { 'padding-left': 0, 'padding-right': 0, head: [], border: [], compact: true },
  })
}
