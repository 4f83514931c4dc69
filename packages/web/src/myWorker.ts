/**
 * Keeps the observer's page on the phone, so that it opens without a signal, and sends waiting reports when the signal
 * comes back, where the browser lets a closed page do so. Answers of the desk are not kept here.
 */
import { cleanupOutdatedCaches, type PrecacheEntry, precacheAndRoute } from 'workbox-precaching'
import { sendWaiting } from './api/my/sendWaiting.ts'
import { sendUrgent } from './api/urgentForm/sendUrgent.ts'

declare const __KEPT_FILES__: PrecacheEntry[]

interface WorkerEvent extends Event {
  waitUntil(work: Promise<unknown>): void
}
interface WorkerScope extends EventTarget {
  skipWaiting(): Promise<void>
  clients: { claim(): Promise<void> }
}
const worker = globalThis as unknown as WorkerScope

cleanupOutdatedCaches()
precacheAndRoute(__KEPT_FILES__, { ignoreURLParametersMatching: [/./], cleanURLs: false })

worker.addEventListener('install', (event) => (event as WorkerEvent).waitUntil(worker.skipWaiting()))
worker.addEventListener('activate', (event) => (event as WorkerEvent).waitUntil(worker.clients.claim()))
worker.addEventListener('sync', (event) => (event as WorkerEvent).waitUntil(Promise.all([sendUrgent(), sendWaiting()])))
