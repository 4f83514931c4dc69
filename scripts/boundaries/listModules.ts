/** Every TypeScript file of the packages, read once, with what it imports. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import { type ModuleSeen, readModule } from './readModule.ts'

export interface Module extends ModuleSeen {
  /** From the root: `packages/desk/src/app/decide.ts`. */
  file: string
  /** `desk` */
  packageName: string
  /** From the package: `src/app/decide.ts`. */
  inside: string
  /** Tests, benches and their fixtures: they may use test libraries and are in no layer. */
  isTest: boolean
}

const skippedFolders = new Set(['node_modules', 'dist', 'fixtures', '.vite'])

/** @param root the folder that holds `packages/` */
export function listModules(root: string): Module[] {
  return readdirSync(join(root, 'packages'))
    .sort()
    .flatMap((packageName) =>
      ['src', 'test'].flatMap((folder) =>
        listFiles(root, posix.join('packages', packageName, folder)).map((file) => moduleAt(root, packageName, file)),
      ),
    )
}

function moduleAt(root: string, packageName: string, file: string): Module {
  const inside = file.slice(`packages/${packageName}/`.length)
  const isTest = inside.startsWith('test/') || /\.(test|bench)\.tsx?$/.test(inside)
  return { ...readModule(file, readFileSync(join(root, file), 'utf8')), file, packageName, inside, isTest }
}

/** Source files below a folder, in a fixed order. Empty when there is no such folder. */
function listFiles(root: string, folder: string): string[] {
  if (!existsSync(join(root, folder))) return []
  return readdirSync(join(root, folder), { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = posix.join(folder, entry.name)
      if (entry.isDirectory()) return skippedFolders.has(entry.name) ? [] : listFiles(root, path)
      return /\.tsx?$/.test(entry.name) && !entry.name.endsWith('.d.ts') ? [path] : []
    })
}
