/**
 * Between packages: science <- contract <- drawings <- desk, web. The scenario knows only science, the bench measures everything.
 * A package is entered by its name alone, and an outside library only when the package's own manifest names it.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Module } from './listModules.ts'
import { resolveImport } from './resolveImport.ts'
import type { Violation } from './violation.ts'

const maySee: Record<string, string[]> = {
  science: [],
  contract: ['science'],
  drawings: ['science', 'contract'],
  scenario: ['science'],
  desk: ['science', 'contract', 'drawings', 'scenario'],
  web: ['science', 'contract', 'drawings'],
  bench: ['science', 'contract', 'drawings', 'scenario', 'desk', 'web'],
}
const maySeeNode = new Set(['desk', 'bench'])
const scienceLibraries = [/^kdbush$/, /^d3-contour$/, /^temporal-polyfill$/, /^@stdlib\//]
/** Tools of the whole repository, in its root manifest: for tests and for the bench. */
const toolsOfTests = new Set(['vitest', 'fast-check', 'playwright-core', '@axe-core/playwright', 'esbuild', 'tsx'])

const wayOutOf: Record<string, string> = {
  science: 'Science stands alone: pass the value in, or move the code to the package that owns it',
  contract: 'Put what both need into packages/science, or the rule into packages/desk',
  drawings: 'Drawings get all they show as props: ask for it in packages/desk or packages/web',
  scenario: 'Let packages/desk turn the invented network into readings',
  desk: 'Put the shared shape in packages/contract; the screens are served as built files',
  web: 'Put the shared shape in packages/contract and ask the desk for it by its interface',
}

/** @returns the violations of one module against the walls between packages */
export function packageViolations(root: string, module: Module, readDeclared = declaredLibraries): Violation[] {
  const { packageName, isTest } = module
  const known = maySee[packageName]
  const found: Violation[] = []
  for (const { specifier, line } of module.imports) {
    const add = (rule: string, wayOut: string) => found.push({ file: module.file, line, rule, wayOut: `${wayOut}.` })
    const target = resolveImport(module.file, specifier)
    if (!known) {
      add(
        `package ${packageName} has no place in the order of packages`,
        'Name it in scripts/boundaries/packageWalls.ts',
      )
      return found
    }
    if (target.kind === 'file' && !target.file.startsWith(`packages/${packageName}/`)) {
      add(`"${specifier}" leaves the package by its path`, 'Import another package by its name, @gaugewright/…')
    }
    if (target.kind === 'ours') {
      if (target.packageName === packageName && !isTest) {
        add(`${packageName} imports itself by name`, 'Inside a package import the file itself')
      } else if (target.packageName !== packageName && !known.includes(target.packageName)) {
        add(`${packageName} may not import ${target.packageName}`, wayOutOf[packageName]!)
      } else if (target.isDeep) {
        add(`"${specifier}" reaches behind the index`, `Export it from packages/${target.packageName}/src/index.ts`)
      }
    }
    if (target.kind === 'node' && !isTest && !maySeeNode.has(packageName)) {
      add(
        `${packageName} may not use ${target.name}`,
        'It also runs in a browser: do the input and output in packages/desk',
      )
    }
    if (target.kind === 'outside' && !((isTest || packageName === 'bench') && toolsOfTests.has(target.name))) {
      if (packageName === 'science' && !isTest && !scienceLibraries.some((allowed) => allowed.test(target.name))) {
        add(
          `science may not import ${target.name}`,
          'It may use kdbush, d3-contour, temporal-polyfill and @stdlib/*: write the few lines, or do it in packages/desk',
        )
      } else if (!readDeclared(root, packageName).has(target.name)) {
        add(
          `${target.name} is not among the dependencies of ${packageName}`,
          `Add it to packages/${packageName}/package.json`,
        )
      }
    }
  }
  return found
}

const cache = new Map<string, Set<string>>()

/** What a package's manifest names. Libraries that only tests use may stand in its devDependencies. */
function declaredLibraries(root: string, packageName: string): Set<string> {
  const path = join(root, 'packages', packageName, 'package.json')
  const kept = cache.get(path)
  if (kept) return kept
  const { dependencies, devDependencies } = JSON.parse(readFileSync(path, 'utf8'))
  const declared = new Set([...Object.keys(dependencies ?? {}), ...Object.keys(devDependencies ?? {})])
  cache.set(path, declared)
  return declared
}
