import type { NetworkHabitsAnswer } from '@gaugewright/contract'
import type { ReactNode } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Key } from '../../ui/Key.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { ScreenHeader } from '../../ui/ScreenHeader.tsx'
import { fill } from '../../words/fill.ts'
import { useWords } from '../../words/WordsContext.tsx'
import { GaugeList } from './GaugeList.tsx'
import { GaugePanel } from './GaugePanel.tsx'
import styles from './GaugesPage.module.css'
import { useGauges } from './useGauges.ts'

type Props = { code: string | null; onGo: (code: string) => void; tools: ReactNode }

/** Gauges: all of them with what their readings show, and one of them in full. On a narrow screen one after the other. */
export function GaugesPage({ code, onGo, tools }: Props) {
  const { words } = useWords()
  const seen = useGauges(code, onGo)
  const { network, gauge } = seen
  return (
    <div className={styles.page}>
      <ScreenHeader networkName={network.data?.network.name ?? ''} tools={tools}>
        <h1 className="sr-only">{words.screens.gauges}</h1>
      </ScreenHeader>
      <main className={styles.main}>
        {network.data ? (
          <>
            <Basis network={network.data} />
            <div className={styles.columns} data-chosen={code !== null}>
              <div className={styles.list}>
                <GaugeList
                  gauges={seen.gauges}
                  total={network.data.gauges.length}
                  chosenCode={seen.shownCode}
                  show={seen.show}
                  onShow={seen.setShow}
                  search={seen.search}
                  onSearch={seen.setSearch}
                  searchRef={seen.searchRef}
                  onGo={onGo}
                />
              </div>
              <div className={styles.panel}>
                {gauge.error ? (
                  <Notice problem={problemFrom(gauge.error)} onRetry={() => void gauge.refetch()} />
                ) : gauge.data ? (
                  <GaugePanel gauge={gauge.data} headingRef={seen.headingRef} />
                ) : seen.shownCode === null ? null : (
                  <p role="status">{words.loading}</p>
                )}
              </div>
            </div>
          </>
        ) : network.error ? (
          <Notice problem={problemFrom(network.error)} onRetry={() => void network.refetch()} />
        ) : (
          <p role="status">{words.gauges.working}</p>
        )}
      </main>
    </div>
  )
}

function Basis({ network }: { network: NetworkHabitsAnswer }) {
  const { words, format } = useWords()
  const own = words.gauges
  const { firstDay, lastDay, judgedDays } = network
  const days = { first: format.dayPlain(firstDay), last: format.dayPlain(lastDay), days: format.whole(judgedDays) }
  const [before = '', between = '', after = '', end = ''] = own.keysHint.split(/\{next\}|\{previous\}|\{search\}/)
  return (
    <div className={styles.basis}>
      <p>{own.intro}</p>
      <p className={styles.soft}>{fill(judgedDays > 0 ? own.basis : own.basisUnjudged, days)}</p>
      <p className={`${styles.soft} ${styles.keys}`}>
        {before}
        <Key>j</Key>
        {between}
        <Key>k</Key>
        {after}
        <Key>/</Key>
        {end}
      </p>
    </div>
  )
}
