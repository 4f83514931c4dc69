/** What every store of mail and reminder settings promises. Each adapter runs the same suite. */
import type { MailSettings, ReminderSettings } from '@gaugewright/contract'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Ledger } from '../ports/ledger.ts'
import type { OutgoingSettingsStore } from '../ports/outgoingSettings.ts'

export interface OpenedSettings {
  ledger: Ledger
  settings: OutgoingSettingsStore
  dispose: () => Promise<void>
}

const mail: MailSettings = {
  host: 'mail.example.org',
  port: 587,
  security: 'starttls',
  user: 'desk',
  from: 'desk@example.org',
  fromName: 'North',
}
const reminders: ReminderSettings = { isOn: true, atTime: '10:00', deskUrl: 'https://desk.example.org', textUrl: null }
const setAtUtc = '2026-05-01T08:00:00.000Z'

export function outgoingSettingsPromises(name: string, open: () => Promise<OpenedSettings>): void {
  describe(`mail and reminder settings in ${name}`, () => {
    let opened: OpenedSettings
    beforeEach(async () => {
      opened = await open()
      await opened.ledger.saveNetwork({
        id: 'north',
        name: 'North',
        timeZone: 'UTC',
        readingTime: '07:00',
        acceptWindowMin: 120,
        unit: 'mm',
        language: 'en',
        docketBelow: 0.5,
      })
    })
    afterEach(() => opened.dispose())

    it('there are none at first, and the last that was set is in force', async () => {
      const { settings } = opened
      expect([await settings.mail('north'), await settings.reminders('north')]).toEqual([null, null])
      await settings.setMail('north', { settings: mail, by: 'P', setAtUtc })
      await settings.setMail('north', { settings: { ...mail, port: 465, user: null }, by: 'Q', setAtUtc })
      await settings.setReminders('north', { settings: reminders, by: 'R', setAtUtc })
      expect(await settings.mail('north')).toEqual({ settings: { ...mail, port: 465, user: null }, by: 'Q', setAtUtc })
      expect(await settings.reminders('north')).toEqual({ settings: reminders, by: 'R', setAtUtc })
      await settings.setMail('north', { settings: null, by: 'P', setAtUtc })
      expect(await settings.mail('north')).toBeNull()
      await expect(settings.setMail('nowhere', { settings: mail, by: 'P', setAtUtc })).rejects.toMatchObject({
        problem: { code: 'NETWORK_UNKNOWN' },
      })
    })

    it('keeps the last choice of each person, until the person is forgotten', async () => {
      const { settings } = opened
      const choice = {
        personId: 'a',
        wants: true,
        way: 'text',
        phone: '+15550100',
        by: 'P',
        chosenAtUtc: setAtUtc,
      } as const
      await settings.choose('north', choice)
      await settings.choose('north', { ...choice, personId: 'b', wants: false, way: 'mail', phone: null })
      await settings.choose('north', { ...choice, wants: false, by: 'link' })
      expect(
        [...(await settings.choices('north')).values()].map(({ personId, wants, by }) => [personId, wants, by]),
      ).toEqual([
        ['a', false, 'link'],
        ['b', false, 'P'],
      ])
      await settings.forgetPerson('a')
      expect([...(await settings.choices('north')).keys()]).toEqual(['b'])
    })

    it('gives the secret that signs links once, and then the same for ever', async () => {
      expect(await opened.settings.linkSecret('north', 'first')).toBe('first')
      expect(await opened.settings.linkSecret('north', 'second')).toBe('first')
    })
  })
}
