/** Whether two names may be one person's: the same words whatever their order, accents and capitals, or one letter apart. */
export function likeNames(a: string, b: string): 'same name' | 'like name' | null {
  const [one, other] = [wordsOf(a), wordsOf(b)]
  if (one === '' || other === '') return null
  if (one === other) return 'same name'
  return Math.min(one.length, other.length) >= 6 && lettersApart(one, other) <= 1 ? 'like name' : null
}

function wordsOf(name: string): string {
  const plain = name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()
  return plain
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '')
    .sort()
    .join(' ')
}

/** Edits of one letter between two texts (Levenshtein), counted no further than 2. */
function lettersApart(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 1) return 2
  let before = Array.from({ length: b.length + 1 }, (_, k) => k)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      row.push(Math.min(before[j]! + 1, row[j - 1]! + 1, before[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)))
    }
    before = row
  }
  return before[b.length]!
}
