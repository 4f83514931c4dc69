/** Every use case has two doors, HTTP and the command line, or one on purpose, with the reason named here. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { routes } from '@gaugewright/contract'
import { describe, expect, it } from 'vitest'

const src = join(import.meta.dirname, '../src')

/** Use cases with one door, and why. */
const oneDoor: Record<string, string> = {
  'cli/importFiles':
    'files are brought in by the person who has them on this computer; uploads come with access rights',
  'cli/takeFromFolder': 'a folder is a door of its own, on this computer',
  'cli/makeDemo': 'makes a ledger, and so comes before any desk is open',
  'cli/runArchive': 'screens files without a ledger',
  'server/addPhoto': 'photos come from the observer’s page',
  'server/checkEntry': 'asked while somebody types on the observer’s page',
  'server/askLink': 'asks for a link to be mailed to the browser that asks',
  'server/stopReminders': 'the link in a note; the command line has "remind choose"',
  'server/signIn': 'signs a browser in; the command line is used by whoever holds the file',
  'server/signOut': 'ends the session of a browser',
  'server/useLink': 'signs in the browser that asked for the link',
  'server/fieldForDay': 'a grid of thousands of cells is for drawing',
  'server/mapLayers': 'draws the base map',
  'server/myGauge': 'the observer’s page',
  'server/myGauges': 'the observer’s page',
  'server/myRecord': 'the observer’s page',
  'server/photosOfReport': 'pictures are for a screen; the files lie beside the ledger',
  'server/readPhoto': 'pictures are for a screen; the files lie beside the ledger',
  'server/keyBehind': 'looks at the key that a program shows',
  'server/sendBulk': 'programs send by HTTP; files come by import',
  'server/sendShef': 'programs send by HTTP; files come by import',
  'server/sendReadings': 'the observer’s page; files come by import',
  'server/fileUrgent': 'the observer’s page; whoever sits at the desk takes a telephone call there too',
  'server/setUrgentSettings': 'the Settings screen',
  'server/urgentForm': 'the observer’s page',
  'server/saveSitting': 'the observer’s page',
  'server/saveMySitting': 'the page of a person’s own offer',
  'server/myDrills': 'the observer’s page; the command line has "drill show"',
  'server/offerPage': 'the public page',
  'server/makeOffer': 'the public page; the command line has "offer add"',
  'server/myOffer': 'the page of a person’s own offer',
  'server/changeMyOffer': 'the page of a person’s own offer; the command line has "offer change"',
  'server/saveMyYard': 'the page of a person’s own offer; the command line has "site survey"',
  'server/withdrawMyOffer': 'the page of a person’s own offer; the command line has "offer forget"',
}

function filesUnder(folder: string): string[] {
  return readdirSync(join(src, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .map((file) => join(src, folder, file))
}

/** Functions that take ports, or archives, and answer a person: exported from a file of their own name. */
function useCases(): string[] {
  const named = readdirSync(join(src, 'app'))
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .map((file) => file.replace(/\.ts$/, ''))
    .filter((name) => {
      const text = readFileSync(join(src, 'app', `${name}.ts`), 'utf8')
      return new RegExp(`export async function ${name}\\([\\s\\S]*?Promise<Answer<`).test(text)
    })
  return [...named.filter((name) => name !== 'currentReading'), 'runArchive'].sort()
}

function isReachedFrom(door: 'server' | 'cli', name: string): boolean {
  const imported = new RegExp(`import \\{[^}]*\\b${name}\\b[^}]*\\} from '[./]+app/(archive/)?${name}\\.ts'`)
  return filesUnder(door).some((file) => imported.test(readFileSync(file, 'utf8')))
}

describe('the doors', () => {
  it('finds the use cases that there are', () => {
    expect(useCases()).toEqual(
      expect.arrayContaining(['decide', 'draftMessage', 'evidenceForReading', 'reviewDay', 'undoDecision', 'whatIf']),
    )
  })

  it.each(useCases())('%s is reached by both doors, or by one on purpose', (name) => {
    const doors = (['cli', 'server'] as const).filter((door) => isReachedFrom(door, name))
    const only = Object.keys(oneDoor).filter((key) => key.endsWith(`/${name}`))
    if (only.length === 0) expect(doors).toEqual(['cli', 'server'])
    else expect(doors).toEqual(only.map((key) => key.split('/')[0]))
  })

  it('names no door for a use case that is gone', () => {
    for (const key of Object.keys(oneDoor)) expect(useCases()).toContain(key.split('/')[1])
  })

  it('every path of the contract has a route of the server', () => {
    const texts = filesUnder('server/routes').map((file) => readFileSync(file, 'utf8'))
    for (const name of Object.keys(routes)) {
      expect(
        texts.filter((text) => text.includes(`routes.${name}.path`)),
        name,
      ).toHaveLength(1)
    }
  })
})
