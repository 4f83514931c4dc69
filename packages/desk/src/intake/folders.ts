import type { Folders } from '../ports/folders.ts'
import { openFileFolder } from './fileFolder.ts'
import { openMailFolder } from './mailFolder.ts'

/** The folders of this computer. */
export const folders: Folders = { files: openFileFolder, mails: openMailFolder }
