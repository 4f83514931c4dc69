import { Link, useLocation } from 'wouter'
import { useWords } from '../words/WordsContext.tsx'
import styles from './ScreenNav.module.css'
import { screens } from './screens.ts'
import { useScreenKeys } from './useScreenKeys.ts'

/** The way from screen to screen: links, so that each opens in a tab of its own too; on a narrow screen a strip that scrolls. */
export function ScreenNav() {
  const { words } = useWords()
  const [path, go] = useLocation()
  useScreenKeys(go)
  return (
    <nav className={styles.nav} aria-label={words.screensLabel}>
      <ul>
        {screens.map(({ id, path: to, key, holds }) => (
          <li key={id}>
            <Link
              href={to}
              className={styles.link ?? ''}
              aria-current={holds(path) ? 'page' : undefined}
              aria-keyshortcuts={key}
            >
              {words.screens[id]}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  )
}
