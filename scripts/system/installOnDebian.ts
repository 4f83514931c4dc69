/** Installs a Debian package when this process may; waits for another apt, and fetches the lists once when they are stale. */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'

const lockWaitS = 300

/** Root on Debian or one of its descendants. */
export function mayInstall(): boolean {
  return process.getuid?.() === 0 && existsSync('/etc/debian_version') && existsSync('/usr/bin/apt-get')
}

/** @returns whether the package is installed afterwards */
export function installOnDebian(packageName: string): boolean {
  const install = ['install', '-y', '--no-install-recommends', packageName]
  return aptGet(install) || (aptGet(['update']) && aptGet(install))
}

function aptGet(words: string[]): boolean {
  const { status } = spawnSync('apt-get', ['-o', `DPkg::Lock::Timeout=${lockWaitS}`, ...words], {
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  })
  return status === 0
}
