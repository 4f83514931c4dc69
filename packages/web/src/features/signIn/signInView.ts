/** The secret of a mailed link, from the part of the address that no server sees: `#link=…`. Null where there is none. */
export function linkIn(hash: string): string | null {
  return new URLSearchParams(hash.replace(/^#/, '')).get('link')
}

/** Where to go after signing in: a path of this desk alone, so that a crafted address leads nowhere else. */
export function pathAfter(next: string | null, role: string): string {
  const isOwn = next !== null && /^\/(?![/\\])/.test(next) && !next.startsWith('/sign-in')
  if (role === 'observer') return isOwn && /^\/my(\/|$|\?)/.test(next) ? next : '/my/'
  return isOwn ? next : '/'
}
