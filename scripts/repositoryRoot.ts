/** The folder of the repository, whatever the working directory is. */
import { fileURLToPath } from 'node:url'

export const repositoryRoot = fileURLToPath(new URL('..', import.meta.url))
