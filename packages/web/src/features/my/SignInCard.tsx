import { type LinkAsked, routes } from '@gaugewright/contract'
import { type FormEvent, useState } from 'react'
import { askDesk } from '../../api/askDesk.ts'
import { problemFrom } from '../../api/problemError.ts'
import { fill } from '../../words/fill.ts'
import type { MyWords } from '../../words/myWords.ts'
import styles from './MyPage.module.css'
import { sayProblem } from './sayProblem.ts'

/** Asks for a sign-in link; told alike whether the address is known. Reports may be written meanwhile. */
export function SignInCard({ words }: { words: MyWords }) {
  const [mail, setMail] = useState('')
  const [told, setTold] = useState('')
  async function onSubmit(event: FormEvent): Promise<void> {
    event.preventDefault()
    try {
      const { minutes } = await askDesk<LinkAsked>(routes.askLink.path, { mail })
      setTold(fill(words.linkSent, { minutes }))
    } catch (error) {
      const problem = problemFrom(error)
      setTold(problem.code === 'DESK_UNREACHABLE' ? words.stale : sayProblem(problem, words))
    }
  }
  return (
    <section className={styles.card} aria-labelledby="sign-in-heading" data-testid="sign-in">
      <h2 id="sign-in-heading">{words.signIn}</h2>
      <p>{words.signInWhy}</p>
      <form className={styles.stack} onSubmit={(event) => void onSubmit(event)}>
        <label className={styles.field}>
          <span>{words.mail}</span>
          <input
            type="email"
            autoComplete="email"
            required
            className={styles.input}
            value={mail}
            onChange={(change) => setMail(change.target.value)}
          />
        </label>
        <button type="submit" className={styles.send}>
          {words.sendLink}
        </button>
      </form>
      <p role="status">{told}</p>
    </section>
  )
}
