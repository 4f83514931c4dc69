import { useMutation, useQuery } from '@tanstack/react-query'
import { postSignOut, whoQuery } from '../api/access.ts'
import { Button } from '../ui/Button.tsx'
import { fill } from '../words/fill.ts'
import { useWords } from '../words/WordsContext.tsx'
import styles from './WhoIsIn.module.css'

/** Who is signed in, and the way out. Nothing while the desk asks nobody to sign in. */
export function WhoIsIn() {
  const { words } = useWords()
  const { access: own } = words
  const who = useQuery({ ...whoQuery, enabled: location.pathname !== '/sign-in' })
  // Loaded anew, so that nothing of what was seen is left in the page.
  const signOut = useMutation({ mutationFn: postSignOut, onSettled: () => location.assign('/sign-in') })
  const actor = who.data?.actor
  if (!actor || who.data?.isOpen) return null
  return (
    <div className={styles.who}>
      <p>{fill(own.signedInAs, { name: actor.name, role: own.roles[actor.role] })}</p>
      <Button onClick={() => signOut.mutate()}>{own.signOut}</Button>
    </div>
  )
}
