/** The desk's HTTP server: the interface of the contract and the screens, for the pages of this desk alone. */
import fastifyCookie from '@fastify/cookie'
import Fastify, { type FastifyError, type FastifyInstance } from 'fastify'
import { refused } from '../app/answer.ts'
import { LedgerError } from '../ports/ledgerError.ts'
import type { Ports } from '../ports/ports.ts'
import { findActor, turnAway } from './access/checkAccess.ts'
import { type Limits, limitRequests, TooOften, usualLimits } from './access/limits.ts'
import { recordChanges } from './access/recordChanges.ts'
import { guardOrigin } from './guardOrigin.ts'
import { machineDoor } from './machine/machineDoor.ts'
import { replyWith } from './reply.ts'
import { addContactRoute } from './routes/addContact.ts'
import { addKeyRoute } from './routes/addKey.ts'
import { addOfferRoute } from './routes/addOffer.ts'
import { addPersonRoute } from './routes/addPerson.ts'
import { addPhotoRoute } from './routes/addPhoto.ts'
import { announceAbsenceRoute } from './routes/announceAbsence.ts'
import { answerOccasionRoute } from './routes/answerOccasion.ts'
import { askLinkRoute } from './routes/askLink.ts'
import { askRefresherRoute } from './routes/askRefresher.ts'
import { askSurveyRoute } from './routes/askSurvey.ts'
import { auditTrailRoute } from './routes/auditTrail.ts'
import { changeMyOfferRoute } from './routes/changeMyOffer.ts'
import { changeOfferRoute } from './routes/changeOffer.ts'
import { changePersonRoute } from './routes/changePerson.ts'
import { checkEntryRoute } from './routes/checkEntry.ts'
import { chooseRemindersRoute } from './routes/chooseReminders.ts'
import { closeUrgentRoute } from './routes/closeUrgent.ts'
import { codedUrgentRoute } from './routes/codedUrgent.ts'
import { decideRoute } from './routes/decide.ts'
import { draftMessageRoute } from './routes/draftMessage.ts'
import { drillsDueRoute } from './routes/drillsDue.ts'
import { drillsOfPersonRoute } from './routes/drillsOfPerson.ts'
import { duplicatePeopleRoute } from './routes/duplicatePeople.ts'
import { evidenceForReadingRoute } from './routes/evidenceForReading.ts'
import { exportAcceptedRoute } from './routes/exportAccepted.ts'
import { exportDayRoute } from './routes/exportDay.ts'
import { exportPeopleRoute } from './routes/exportPeople.ts'
import { exportPersonRoute } from './routes/exportPerson.ts'
import { exportShefRoute } from './routes/exportShef.ts'
import { fieldForDayRoute } from './routes/fieldForDay.ts'
import { fileUrgentRoute } from './routes/fileUrgent.ts'
import { forgetCandidateRoute } from './routes/forgetCandidate.ts'
import { forgetPersonRoute } from './routes/forgetPerson.ts'
import { gaugeHabitsRoute } from './routes/gaugeHabits.ts'
import { giveGaugeRoute } from './routes/giveGauge.ts'
import { holdingRoute } from './routes/holding.ts'
import { importPeopleRoute } from './routes/importPeople.ts'
import { leafRoute } from './routes/leaf.ts'
import { listAbsencesRoute } from './routes/listAbsences.ts'
import { listContactsRoute } from './routes/listContacts.ts'
import { listKeysRoute } from './routes/listKeys.ts'
import { listLettersRoute } from './routes/listLetters.ts'
import { listPeopleRoute } from './routes/listPeople.ts'
import { makeOfferRoute } from './routes/makeOffer.ts'
import { mapLayersRoute } from './routes/mapLayers.ts'
import { markSeenRoute } from './routes/markSeen.ts'
import { moveOfferRoute } from './routes/moveOffer.ts'
import { myDrillsRoute } from './routes/myDrills.ts'
import { myGaugeRoute } from './routes/myGauge.ts'
import { myGaugesRoute } from './routes/myGauges.ts'
import { myOfferRoute } from './routes/myOffer.ts'
import { myRecordRoute } from './routes/myRecord.ts'
import { networkHabitsRoute } from './routes/networkHabits.ts'
import { networkLetterRoute } from './routes/networkLetter.ts'
import { offerPageRoute } from './routes/offerPage.ts'
import { passOnRoute } from './routes/passOn.ts'
import { peopleDeskRoute } from './routes/peopleDesk.ts'
import { peopleLiveRoute } from './routes/peopleLive.ts'
import { photoRoute } from './routes/photo.ts'
import { photosOfReportRoute } from './routes/photosOfReport.ts'
import { previewLetterRoute } from './routes/previewLetter.ts'
import { previewRuleRoute } from './routes/previewRule.ts'
import { readOfferPageRoute } from './routes/readOfferPage.ts'
import { readOutboxRoute } from './routes/readOutbox.ts'
import { readOutgoingSettingsRoute } from './routes/readOutgoingSettings.ts'
import { readRuleRoute } from './routes/readRule.ts'
import { readSiteRoute } from './routes/readSite.ts'
import { remindRoute } from './routes/remind.ts'
import { reviewDayRoute } from './routes/reviewDay.ts'
import { revokeKeyRoute } from './routes/revokeKey.ts'
import { rollOfGaugeRoute } from './routes/rollOfGauge.ts'
import { saveMySittingRoute } from './routes/saveMySitting.ts'
import { saveMyYardRoute } from './routes/saveMyYard.ts'
import { saveSittingRoute } from './routes/saveSitting.ts'
import { saveSurveyRoute } from './routes/saveSurvey.ts'
import { sendLeafRoute } from './routes/sendLeaf.ts'
import { sendLetterRoute } from './routes/sendLetter.ts'
import { sendReadingsRoute } from './routes/sendReadings.ts'
import { sendSiteReportRoute } from './routes/sendSiteReport.ts'
import { sendTestMailRoute } from './routes/sendTestMail.ts'
import { setDrillsRoute } from './routes/setDrills.ts'
import { setLetterRoute } from './routes/setLetter.ts'
import { setMailRoute } from './routes/setMail.ts'
import { setOfferPageRoute } from './routes/setOfferPage.ts'
import { setPasswordRoute } from './routes/setPassword.ts'
import { setRemindersRoute } from './routes/setReminders.ts'
import { setRoleRoute } from './routes/setRole.ts'
import { setRuleRoute } from './routes/setRule.ts'
import { settleOutgoingRoute } from './routes/settleOutgoing.ts'
import { setUrgentSettingsRoute } from './routes/setUrgentSettings.ts'
import { signInRoute } from './routes/signIn.ts'
import { signOutRoute } from './routes/signOut.ts'
import { siteReportRoute } from './routes/siteReport.ts'
import { sitesDueRoute } from './routes/sitesDue.ts'
import { stopRemindersRoute } from './routes/stopReminders.ts'
import { undoDecisionRoute } from './routes/undoDecision.ts'
import { undoOfferRoute } from './routes/undoOffer.ts'
import { undoUrgentRoute } from './routes/undoUrgent.ts'
import { urgentFormRoute } from './routes/urgentForm.ts'
import { urgentLiveRoute } from './routes/urgentLive.ts'
import { urgentNowRoute } from './routes/urgentNow.ts'
import { useLinkRoute } from './routes/useLink.ts'
import { whatIfRoute } from './routes/whatIf.ts'
import { whoRoute } from './routes/who.ts'
import { withdrawAbsenceRoute } from './routes/withdrawAbsence.ts'
import { withdrawContactRoute } from './routes/withdrawContact.ts'
import { withdrawMyOfferRoute } from './routes/withdrawMyOffer.ts'
import { withdrawSurveyRoute } from './routes/withdrawSurvey.ts'
import { secureHeaders } from './secureHeaders.ts'
import { builtScreens, serveScreens } from './serveScreens.ts'

export interface ServerOptions {
  /** Folder of the built screens. */
  screens?: string
  /** Host names by which the desk may be addressed. */
  allowedHosts?: readonly string[]
  /** Where people reach the desk, without a slash at its end, when it is not by the address that they ask. */
  publicUrl?: string
  /** Key and certificate, as PEM: then the desk speaks https. */
  tls?: { key: string; cert: string }
  /** Let whoever sits at this computer in while nobody has a password; true by default. */
  mayOpen?: boolean
  limits?: Partial<Limits>
  /** Told of every failure of ours; the asker sees only that there was one. */
  onFailure?: (error: Error) => void
}

const BODY_LIMIT_BYTES = 256 * 1024
export const loopbackHosts = ['127.0.0.1', 'localhost', '[::1]'] as const

export async function buildServer(ports: Ports, options: ServerOptions = {}): Promise<FastifyInstance> {
  const app = Fastify({
    bodyLimit: BODY_LIMIT_BYTES,
    forceCloseConnections: true,
    routerOptions: { maxParamLength: 200 },
    // Only a proxy on this computer may say for whom it asks.
    trustProxy: options.publicUrl === undefined ? false : 'loopback',
    ...(options.tls !== undefined && { https: options.tls }),
  })
  app.decorate('onFailure', (error: Error) => options.onFailure?.(error))
  const isSecure = options.tls !== undefined || options.publicUrl?.startsWith('https:') === true
  const limits = { ...usualLimits, ...options.limits }
  app.decorate('isSecure', isSecure)
  app.decorate('limits', limits)
  app.decorate('publicUrl', options.publicUrl)
  guardOrigin(app, options.allowedHosts ?? loopbackHosts)
  await app.register(fastifyCookie)
  findActor(app, ports, options.mayOpen ?? options.publicUrl === undefined)
  await limitRequests(app, limits)
  turnAway(app)
  recordChanges(app, ports)
  await secureHeaders(app, isSecure)
  app.setErrorHandler((error: FastifyError | LedgerError, _request, reply) => {
    if (error instanceof TooOften) return replyWith(reply, error.answer)
    if (error instanceof LedgerError) return replyWith(reply, { ok: false, problem: error.problem })
    const problem = problemFrom(error, _request.routeOptions.bodyLimit)
    if (problem.problem.code === 'DESK_FAILED') options.onFailure?.(error)
    return replyWith(reply, problem)
  })
  for (const route of [
    whoRoute,
    signInRoute,
    askLinkRoute,
    useLinkRoute,
    signOutRoute,
    listPeopleRoute,
    addPersonRoute,
    setRoleRoute,
    changePersonRoute,
    setPasswordRoute,
    forgetPersonRoute,
    exportPersonRoute,
    auditTrailRoute,
    peopleDeskRoute,
    peopleLiveRoute,
    addOfferRoute,
    changeOfferRoute,
    moveOfferRoute,
    undoOfferRoute,
    giveGaugeRoute,
    forgetCandidateRoute,
    offerPageRoute,
    makeOfferRoute,
    myOfferRoute,
    changeMyOfferRoute,
    saveMyYardRoute,
    withdrawMyOfferRoute,
    readOfferPageRoute,
    setOfferPageRoute,
    listContactsRoute,
    addContactRoute,
    withdrawContactRoute,
    listLettersRoute,
    setLetterRoute,
    previewLetterRoute,
    sendLetterRoute,
    readSiteRoute,
    saveSurveyRoute,
    withdrawSurveyRoute,
    askSurveyRoute,
    sitesDueRoute,
    sendSiteReportRoute,
    siteReportRoute,
    saveSittingRoute,
    saveMySittingRoute,
    myDrillsRoute,
    drillsOfPersonRoute,
    askRefresherRoute,
    drillsDueRoute,
    setDrillsRoute,
    holdingRoute,
    answerOccasionRoute,
    rollOfGaugeRoute,
    leafRoute,
    sendLeafRoute,
    networkLetterRoute,
    importPeopleRoute,
    exportPeopleRoute,
    duplicatePeopleRoute,
    listKeysRoute,
    addKeyRoute,
    revokeKeyRoute,
    machineDoor,
    reviewDayRoute,
    fieldForDayRoute,
    evidenceForReadingRoute,
    draftMessageRoute,
    whatIfRoute,
    decideRoute,
    undoDecisionRoute,
    readRuleRoute,
    setRuleRoute,
    previewRuleRoute,
    networkHabitsRoute,
    gaugeHabitsRoute,
    mapLayersRoute,
    exportAcceptedRoute,
    exportDayRoute,
    chooseRemindersRoute,
    readOutboxRoute,
    readOutgoingSettingsRoute,
    remindRoute,
    sendTestMailRoute,
    setMailRoute,
    setRemindersRoute,
    settleOutgoingRoute,
    stopRemindersRoute,
    exportShefRoute,
    myGaugesRoute,
    myGaugeRoute,
    myRecordRoute,
    checkEntryRoute,
    sendReadingsRoute,
    announceAbsenceRoute,
    withdrawAbsenceRoute,
    listAbsencesRoute,
    urgentFormRoute,
    addPhotoRoute,
    photosOfReportRoute,
    photoRoute,
    fileUrgentRoute,
    urgentNowRoute,
    urgentLiveRoute,
    markSeenRoute,
    passOnRoute,
    closeUrgentRoute,
    undoUrgentRoute,
    codedUrgentRoute,
    setUrgentSettingsRoute,
  ]) {
    route(app, ports)
  }
  await serveScreens(app, options.screens ?? builtScreens())
  return app
}

function problemFrom(error: FastifyError, bodyLimit = BODY_LIMIT_BYTES): ReturnType<typeof refused> {
  if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE') {
    return refused('BODY_TOO_LARGE', `a body above ${bodyLimit / 1024} kB`, 'Send less at once.')
  }
  if (error.code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE' || error.code === 'FST_ERR_CTP_EMPTY_JSON_BODY') {
    return refused('BODY_NOT_JSON', 'a body that is not JSON', 'Send JSON, with the content type application/json.')
  }
  if ((error.statusCode ?? 500) < 500) {
    return refused('ASK_NOT_VALID', error.message, 'Send the fields of the interface as documented.')
  }
  return refused(
    'DESK_FAILED',
    'something failed inside the desk; nothing was changed',
    'Try again; if it stays, run "gaugewright doctor".',
  )
}
