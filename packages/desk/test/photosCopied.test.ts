/** Photos go where their ledger goes: into a backup, back from it, and beside what a restore put aside. */
import { rmSync } from 'node:fs'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { photoFolderOf, photoPath, photosInFolder } from '../src/store/photoFiles.ts'
import { openSqlitePorts } from '../src/store/sqlite/openSqlitePorts.ts'
import { smallNetwork } from './support/smallNetwork.ts'
import { type TestWorld, testWorld } from './support/testWorld.ts'

let world: TestWorld
beforeAll(async () => {
  world = await testWorld()
})
afterAll(() => world.remove())

/** A ledger with a photo for each content. @returns names of the photos */
async function ledgerWith(path: string, contents: readonly string[]): Promise<string[]> {
  const { ledger, photos } = await openSqlitePorts(path)
  const { network } = smallNetwork(1)
  await ledger.saveNetwork(network)
  const names: string[] = []
  for (const content of contents) {
    const photo = {
      networkId: network.id,
      reportId: 'r',
      widthPx: 4,
      heightPx: 3,
      by: 'A',
      receivedAtUtc: '2026-06-01T10:00:00Z',
    }
    names.push((await photos.add({ ...photo, jpeg: new TextEncoder().encode(content) })).sha256)
  }
  await ledger.close()
  return names.sort()
}

it('a backup brings its photos along, and restore puts them back in the place of others, which are kept', async () => {
  const [db, copy, other] = [world.path('db'), world.path('copy'), world.path('other')]
  const names = await ledgerWith(db, ['one', 'three'])
  const said = await world.gaugewright('backup', copy, '--db', db)
  expect([said.code, said.err]).toEqual([0, ''])
  expect(said.out).toContain('2 photos')
  expect(await photosInFolder(photoFolderOf(copy))).toEqual(names)

  const others = await ledgerWith(other, ['two'])
  // The driver lets go of a closed file once a command has ended.
  await world.gaugewright('doctor', '--db', other)
  const restored = await world.gaugewright('restore', copy, '--db', other, '--replace')
  expect(restored.code).toBe(0)
  expect(await photosInFolder(photoFolderOf(other))).toEqual(names)
  expect(await photosInFolder(photoFolderOf(`${other}.before-1`))).toEqual(others)
  const { ledger, photos } = await openSqlitePorts(other)
  expect(new TextDecoder().decode((await photos.read('small', names[0]!))?.jpeg)).toMatch(/one|three/)
  await ledger.close()

  const fresh = await world.gaugewright('restore', copy, '--db', world.path('fresh'))
  expect(fresh.code).toBe(0)
  expect(await photosInFolder(photoFolderOf(world.path('fresh')))).toEqual(names)
})

it('the doctor names a photo whose file is lost, and a backup says that it is not in it', async () => {
  const db = world.path('lost')
  const [name] = await ledgerWith(db, ['only'])
  expect((await world.gaugewright('doctor', '--db', db)).out).toMatch(/^photo +1$/m)
  rmSync(photoPath(photoFolderOf(db), name!))
  const doctor = await world.gaugewright('doctor', '--db', db)
  expect([doctor.code, doctor.err]).toEqual([1, expect.stringContaining('PHOTO_FILE_GONE')])
  expect(doctor.out).toContain(`photo lost  ${name}`)
  const backup = await world.gaugewright('backup', world.path('lost-copy'), '--db', db)
  expect([backup.code, backup.out]).toEqual([0, expect.stringContaining('1 photos are lost')])
})
