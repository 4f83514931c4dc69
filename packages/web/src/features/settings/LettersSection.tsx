import { type LetterStep, type LetterTemplate, letterSteps } from '@gaugewright/contract'
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { lettersQuery, setLetter } from '../../api/people.ts'
import { problemFrom } from '../../api/problemError.ts'
import { Button } from '../../ui/Button.tsx'
import { Choice } from '../../ui/Choice.tsx'
import { Notice } from '../../ui/Notice.tsx'
import { useWords } from '../../words/WordsContext.tsx'
import styles from './PeopleSections.module.css'

/** Templates of letters: edited, seen as an invented person would get them, and their earlier versions. */
export function LettersSection({ network }: { network: string }) {
  const { words, language: shown } = useWords()
  const own = words.people.templates
  const letters = useQuery(lettersQuery)
  const [step, setStep] = useState<LetterStep>('offer received')
  const [language, setLanguage] = useState<'en' | 'es'>(shown)
  const template = letters.data?.templates.find((one) => one.step === step && one.language === language)
  return (
    <section className={styles.section} aria-labelledby="letters">
      <h2 id="letters">{own.title}</h2>
      <p>{own.intro}</p>
      <div className={styles.acts}>
        <label className={styles.inline}>
          {own.which}
          <select value={step} onChange={(event) => setStep(event.target.value as LetterStep)}>
            {letterSteps.map((one) => (
              <option key={one} value={one}>
                {words.people.letterSteps[one]}
              </option>
            ))}
          </select>
        </label>
        <Choice
          label={words.people.language}
          labelHidden
          value={language}
          options={(['en', 'es'] as const).map((value) => ({ value, label: words.languageNames[value] }))}
          onChange={setLanguage}
        />
      </div>
      {template ? (
        <TemplateForm key={`${step} ${language}`} template={template} network={network} />
      ) : letters.error ? (
        <Notice problem={problemFrom(letters.error)} onRetry={() => void letters.refetch()} />
      ) : (
        <p role="status">{words.loading}</p>
      )}
    </section>
  )
}

/** What stands in the place of an occasion: a period in the letter that brings a page, a sentence in thanks. */
function occasionOf({ step, language }: LetterTemplate): string {
  if (step === 'leaf') return '2026-05'
  return language === 'es' ? 'Ya son 100 lecturas de Mill garden.' : 'Mill garden has sent 100 readings by now.'
}

const example: Record<string, string> = {
  name: 'Ada Example',
  coordinator: 'Cora',
  gauge: 'Mill garden',
  code: 'A1B2C',
  link: 'https://desk.example/…',
}

function TemplateForm({ template, network }: { template: LetterTemplate; network: string }) {
  const { words, format } = useWords()
  const own = words.people.templates
  const client = useQueryClient()
  const [subject, setSubject] = useState(template.subject)
  const [text, setText] = useState(template.text)
  const set = useMutation({
    mutationFn: setLetter,
    onSuccess: (next) => client.setQueryData(lettersQuery.queryKey, next),
  })
  const inPlace: Record<string, string> = { ...example, network, occasion: occasionOf(template) }
  const filled = (words0: string) => words0.replace(/\{(\w+)\}/g, (whole, name: string) => inPlace[name] ?? whole)
  return (
    <form
      className={styles.form}
      onSubmit={(event) => {
        event.preventDefault()
        set.mutate({ step: template.step, language: template.language, subject, text })
      }}
    >
      <div className={styles.sideBySide}>
        <div className={styles.form}>
          <label>
            {words.people.subject}
            <input
              lang={template.language}
              value={subject}
              maxLength={200}
              required
              onChange={(event) => setSubject(event.target.value)}
            />
          </label>
          <label>
            {words.people.text}
            <textarea
              lang={template.language}
              rows={12}
              value={text}
              maxLength={8000}
              required
              onChange={(event) => setText(event.target.value)}
            />
          </label>
        </div>
        <figure className={styles.preview} lang={template.language}>
          <figcaption>{own.preview}</figcaption>
          <p>
            <strong>{filled(subject)}</strong>
          </p>
          <p className={styles.said}>{filled(text)}</p>
        </figure>
      </div>
      {set.error ? <Notice problem={problemFrom(set.error)} /> : null}
      <div className={styles.acts}>
        <Button
          type="submit"
          look="primary"
          disabled={set.isPending || (subject === template.subject && text === template.text)}
        >
          {own.save}
        </Button>
        <span role="status">{set.isSuccess ? own.saved : template.isUsual ? own.usual : ''}</span>
      </div>
      {template.versions.length === 0 ? null : (
        <details>
          <summary>{own.versions}</summary>
          <ul className={styles.versions}>
            {[...template.versions].reverse().map((version) => (
              <li key={version.id}>
                {format.instant(version.atUtc)} {version.by} · {version.subject}{' '}
                <Button
                  look="quiet"
                  onClick={() => {
                    setSubject(version.subject)
                    setText(version.text)
                  }}
                >
                  {own.restore}
                </Button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </form>
  )
}
