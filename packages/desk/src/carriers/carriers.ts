import type { Carriers } from '../ports/carriers.ts'
import { carryFile } from './carryFile.ts'
import { carryMail } from './carryMail.ts'
import { carryWebhook } from './carryWebhook.ts'

export const carriers: Carriers = { mail: carryMail, webhook: carryWebhook, file: carryFile }
