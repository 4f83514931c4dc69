import type { ReactNode } from 'react'
import { useWords } from '../words/WordsContext.tsx'
import styles from './ScreenHeader.module.css'
import { ScreenNav } from './ScreenNav.tsx'

type Props = { networkName: string; tools: ReactNode; children: ReactNode }

/** What stands above every screen: whose desk it is, the way to the other screens, the screen's own heading, and tools. */
export function ScreenHeader({ networkName, tools, children }: Props) {
  const { words } = useWords()
  return (
    <header className={styles.header}>
      <div className={styles.brand}>
        <img src="/mark.svg" alt="" width="30" height="30" />
        <div>
          <p className={styles.app}>{words.appName}</p>
          <p className={styles.network}>{networkName}</p>
        </div>
      </div>
      <div className={styles.screens}>
        <ScreenNav />
      </div>
      <div className={styles.own}>{children}</div>
      <div className={styles.tools}>{tools}</div>
    </header>
  )
}
