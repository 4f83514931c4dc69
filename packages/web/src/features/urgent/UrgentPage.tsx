import type { ReactNode } from 'react'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { ScreenHeader } from '../../ui/ScreenHeader.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import { CloseDialog } from './CloseDialog.tsx'
import { PassOnDialog } from './PassOnDialog.tsx'
import { SoundSwitch } from './SoundSwitch.tsx'
import { UrgentBasis } from './UrgentBasis.tsx'
import { UrgentList } from './UrgentList.tsx'
import { UrgentMapView } from './UrgentMapView.tsx'
import styles from './UrgentPage.module.css'
import { UrgentPanel } from './UrgentPanel.tsx'
import { useUrgent } from './useUrgent.ts'

type Props = { chosenId: string | null; onGo: (id: string) => void; onBack: () => void; tools: ReactNode }

/** Urgent: what would change a warning, first; one report in full, the map of all. On a narrow screen one after the other. */
export function UrgentPage({ chosenId, onGo, onBack, tools }: Props) {
  const { words } = useWords()
  const desk = useUrgent(chosenId, onGo)
  const { list, shown } = desk
  return (
    <div className={styles.page}>
      <ScreenHeader networkName={list.data?.network.name ?? ''} tools={tools}>
        <h1 className="sr-only">{words.screens.urgent}</h1>
      </ScreenHeader>
      <main className={styles.main}>
        {list.error && list.data === undefined ? (
          <Notice problem={problemFrom(list.error)} onRetry={() => void list.refetch()} />
        ) : null}
        {list.data === undefined && !list.error ? <p role="status">{words.loading}</p> : null}
        {list.data ? (
          <>
            <UrgentBasis now={list.data} line={desk.line} />
            {desk.actError && desk.dialog === null ? (
              <Notice problem={problemFrom(desk.actError)} onDismiss={desk.forgetError} />
            ) : null}
            <div className={styles.columns} data-chosen={chosenId !== null && shown !== null}>
              <div className={styles.list}>
                <UrgentList
                  items={desk.items}
                  hiddenCount={list.data.hiddenCount}
                  shownId={desk.shownId}
                  nowMs={desk.nowMs}
                  onGo={onGo}
                />
              </div>
              <div className={styles.panel}>
                <Button look="quiet" className={styles.back ?? ''} onClick={onBack}>
                  ‹ {words.urgent.back}
                </Button>
                {shown ? (
                  <UrgentPanel
                    item={shown}
                    storm={list.data.storms.find(({ id }) => id === shown.stormId) ?? null}
                    desk={desk}
                  />
                ) : null}
              </div>
              <div className={styles.map}>
                <UrgentMapView items={desk.items} storms={list.data.storms} shownId={desk.shownId} onGo={onGo} />
              </div>
            </div>
            <SoundSwitch />
            {shown && desk.dialog === 'pass on' ? (
              <PassOnDialog item={shown} settings={list.data.settings} desk={desk} />
            ) : null}
            {shown && desk.dialog === 'close' ? <CloseDialog item={shown} desk={desk} /> : null}
          </>
        ) : null}
      </main>
    </div>
  )
}
