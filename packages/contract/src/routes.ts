/** Paths of the desk's own interface, one per use case. `:day` is an ISO date or `latest`. */
export const routes = {
  reviewDay: { method: 'GET', path: '/api/days/:day' }, // -> dayReviewSchema
  fieldForDay: { method: 'GET', path: '/api/days/:day/field' }, // -> fieldSchema
  evidence: { method: 'GET', path: '/api/days/:day/evidence/:readingId' }, // -> evidenceSchema
  whatIf: { method: 'POST', path: '/api/what-if' }, // whatIfAskSchema -> whatIfSchema
  decide: { method: 'POST', path: '/api/decisions' }, // decideAskSchema -> dayReviewSchema (the day, reviewed anew)
  undo: { method: 'POST', path: '/api/decisions/undo' }, // undoAskSchema -> dayReviewSchema
  draftMessage: { method: 'GET', path: '/api/days/:day/message/:readingId' }, // -> draftMessageSchema
  exportDay: { method: 'GET', path: '/api/days/:day/gauges.geojson' }, // -> exportedDaySchema
  exportAccepted: { method: 'GET', path: '/api/accepted.csv' }, // exportAcceptedAskSchema as query -> text/csv
  exportShef: { method: 'GET', path: '/api/days/:day/accepted.shef' }, // exportShefAskSchema as query -> text/plain
  readRule: { method: 'GET', path: '/api/rule' }, // -> ruleSchema
  setRule: { method: 'POST', path: '/api/rule' }, // setRuleAskSchema -> ruleSchema
  previewRule: { method: 'GET', path: '/api/rule/preview' }, // previewRuleAskSchema as query -> rulePreviewSchema, or lines
  networkHabits: { method: 'GET', path: '/api/habits' }, // -> networkHabitsSchema
  gaugeHabits: { method: 'GET', path: '/api/habits/:gauge' }, // -> gaugeHabitsSchema
  mapLayers: { method: 'GET', path: '/api/map' }, // -> mapLayersSchema
  addPhoto: { method: 'POST', path: '/api/photos' }, // addPhotoAskSchema -> photoSchema; the same photo again changes nothing
  urgentForm: { method: 'GET', path: '/api/urgent/form' }, // urgentFormAskSchema as query -> urgentFormSchema
  photosOfReport: { method: 'GET', path: '/api/urgent/:report/photos' }, // -> photosOfReportSchema
  photo: { method: 'GET', path: '/api/photos/:sha256' }, // -> image/jpeg, for the desk's own people
  fileUrgent: { method: 'POST', path: '/api/urgent' }, // fileUrgentAskSchema -> fileUrgentSchema
  urgentNow: { method: 'GET', path: '/api/urgent' }, // urgentNowAskSchema as query -> urgentNowSchema
  urgentLive: { method: 'GET', path: '/api/urgent/live' }, // -> text/event-stream of urgentLiveSchema
  markSeen: { method: 'POST', path: '/api/urgent/seen' }, // markSeenAskSchema -> urgentNowSchema
  passOn: { method: 'POST', path: '/api/urgent/passed-on' }, // passOnAskSchema -> urgentNowSchema
  closeUrgent: { method: 'POST', path: '/api/urgent/closed' }, // closeUrgentAskSchema -> urgentNowSchema
  undoUrgent: { method: 'POST', path: '/api/urgent/undo' }, // undoUrgentAskSchema -> urgentNowSchema
  codedUrgent: { method: 'GET', path: '/api/urgent/:report/coded' }, // codedUrgentAskSchema as query -> codedUrgentSchema
  setUrgentSettings: { method: 'POST', path: '/api/urgent/settings' }, // setUrgentSettingsAskSchema -> urgentSettingsSchema
  myGauges: { method: 'GET', path: '/api/my/gauges' }, // -> myGaugesSchema
  myGauge: { method: 'GET', path: '/api/my/gauges/:gauge' }, // -> myGaugeSchema
  myRecord: { method: 'GET', path: '/api/my/gauges/:gauge/record' }, // -> myRecordSchema
  checkEntry: { method: 'POST', path: '/api/my/check' }, // checkEntryAskSchema -> checkedEntrySchema
  sendReadings: { method: 'POST', path: '/api/my/readings' }, // sendReadingsAskSchema -> sentReadingsSchema; twice is once
  announceAbsence: { method: 'POST', path: '/api/my/absences' }, // announceAbsenceAskSchema -> announcedAbsenceSchema
  withdrawAbsence: { method: 'POST', path: '/api/my/absences/withdraw' }, // withdrawAbsenceAskSchema -> announcedAbsenceSchema
  listAbsences: { method: 'GET', path: '/api/absences' }, // listAbsencesAskSchema as query -> networkAbsencesSchema
  readOutbox: { method: 'GET', path: '/api/outbox' }, // readOutboxAskSchema as query -> outboxSchema
  settleOutgoing: { method: 'POST', path: '/api/outbox/settle' }, // settleOutgoingAskSchema -> outgoingRowSchema
  readOutgoingSettings: { method: 'GET', path: '/api/outgoing-settings' }, // -> outgoingSettingsSchema
  setMail: { method: 'POST', path: '/api/outgoing-settings/mail' }, // setMailAskSchema -> outgoingSettingsSchema
  setReminders: { method: 'POST', path: '/api/outgoing-settings/reminders' }, // setRemindersAskSchema -> outgoingSettingsSchema
  sendTestMail: { method: 'POST', path: '/api/outgoing-settings/test-mail' }, // sendTestMailAskSchema -> queuedMailSchema
  remind: { method: 'GET', path: '/api/reminders' }, // -> remindedSchema: who would be reminded now
  chooseReminders: { method: 'POST', path: '/api/reminders/choice' }, // chooseRemindersAskSchema -> reminderChoiceSchema
  stopReminders: { method: 'POST', path: '/reminders/stop/:token' }, // one tap in a note: RFC 8058; GET asks first
  who: { method: 'GET', path: '/api/who' }, // -> whoSchema
  signIn: { method: 'POST', path: '/api/sign-in' }, // signInAskSchema -> whoSchema
  askLink: { method: 'POST', path: '/api/sign-in/link' }, // askLinkAskSchema -> linkAskedSchema
  useLink: { method: 'POST', path: '/api/sign-in/link/use' }, // useLinkAskSchema -> whoSchema
  signOut: { method: 'POST', path: '/api/sign-out' }, // {} -> signedOutSchema
  listPeople: { method: 'GET', path: '/api/people' }, // -> peopleSchema
  addPerson: { method: 'POST', path: '/api/people' }, // addPersonAskSchema -> peopleSchema
  setRole: { method: 'POST', path: '/api/people/role' }, // setRoleAskSchema -> peopleSchema
  changePerson: { method: 'POST', path: '/api/people/change' }, // changePersonAskSchema -> peopleSchema
  setPassword: { method: 'POST', path: '/api/people/password' }, // setPasswordAskSchema -> peopleSchema
  forgetPerson: { method: 'POST', path: '/api/people/forget' }, // personAskSchema -> peopleSchema
  exportPerson: { method: 'GET', path: '/api/people/:person/export' }, // -> personExportSchema
  peopleDesk: { method: 'GET', path: '/api/people/desk' }, // -> peopleDeskSchema
  peopleLive: { method: 'GET', path: '/api/people/live' }, // -> text/event-stream: something about people has changed
  addOffer: { method: 'POST', path: '/api/offers' }, // addOfferAskSchema -> candidateSchema
  changeOffer: { method: 'POST', path: '/api/offers/change' }, // changeOfferAskSchema -> candidateSchema
  moveOffer: { method: 'POST', path: '/api/offers/state' }, // moveOfferAskSchema -> candidateSchema
  undoOffer: { method: 'POST', path: '/api/offers/undo' }, // undoOfferAskSchema -> candidateSchema
  giveGauge: { method: 'POST', path: '/api/offers/gauge' }, // giveGaugeAskSchema -> candidateSchema
  forgetCandidate: { method: 'POST', path: '/api/offers/forget' }, // forgetCandidateAskSchema -> offerGoneSchema
  offerPage: { method: 'GET', path: '/api/offer/page' }, // -> offerPageSchema, for anyone
  makeOffer: { method: 'POST', path: '/api/offer' }, // makeOfferAskSchema -> offerMadeSchema, for anyone
  myOffer: { method: 'POST', path: '/api/offer/mine' }, // myOfferAskSchema -> myOfferSchema, for whoever holds the link
  changeMyOffer: { method: 'POST', path: '/api/offer/mine/change' }, // changeMyOfferAskSchema -> myOfferSchema
  saveMyYard: { method: 'POST', path: '/api/offer/mine/yard' }, // saveMyYardAskSchema -> myOfferSchema
  withdrawMyOffer: { method: 'POST', path: '/api/offer/mine/withdraw' }, // myOfferAskSchema -> offerGoneSchema
  readOfferPage: { method: 'GET', path: '/api/offer-page' }, // -> offerPageSettingsSchema
  setOfferPage: { method: 'POST', path: '/api/offer-page' }, // offerPageWordsSchema -> offerPageSettingsSchema
  listContacts: { method: 'GET', path: '/api/contacts' }, // contactsAskSchema as query -> contactsSchema
  addContact: { method: 'POST', path: '/api/contacts' }, // addContactAskSchema -> contactsSchema
  withdrawContact: { method: 'POST', path: '/api/contacts/withdraw' }, // withdrawContactAskSchema -> contactsSchema
  listLetters: { method: 'GET', path: '/api/letters' }, // -> letterTemplatesSchema
  setLetter: { method: 'POST', path: '/api/letters' }, // setLetterAskSchema -> letterTemplatesSchema
  previewLetter: { method: 'GET', path: '/api/letters/preview' }, // previewLetterAskSchema as query -> letterPreviewSchema
  sendLetter: { method: 'POST', path: '/api/letters/send' }, // sendLetterAskSchema -> contactsSchema
  readSite: { method: 'GET', path: '/api/site' }, // readSiteAskSchema as query -> siteSchema
  saveSurvey: { method: 'POST', path: '/api/surveys' }, // saveSurveyAskSchema -> siteSchema
  withdrawSurvey: { method: 'POST', path: '/api/surveys/withdraw' }, // withdrawSurveyAskSchema -> siteSchema
  askSurvey: { method: 'POST', path: '/api/surveys/ask' }, // askSurveyAskSchema -> siteSchema
  sitesDue: { method: 'GET', path: '/api/sites/due' }, // -> sitesDueSchema
  siteReport: { method: 'GET', path: '/api/site/report.html' }, // readSiteAskSchema as query -> text/html
  sendSiteReport: { method: 'POST', path: '/api/site/report/send' }, // readSiteAskSchema -> contactsSchema
  saveSitting: { method: 'POST', path: '/api/my/drills' }, // sittingAskSchema -> drillsOfPersonSchema
  saveMySitting: { method: 'POST', path: '/api/offer/mine/drills' }, // mySittingAskSchema -> drillsOfPersonSchema
  myDrills: { method: 'GET', path: '/api/my/drills' }, // -> drillsOfPersonSchema
  drillsOfPerson: { method: 'GET', path: '/api/drills' }, // drillsAskSchema as query -> drillsOfPersonSchema
  askRefresher: { method: 'POST', path: '/api/drills/refresher' }, // drillsAskSchema -> drillsOfPersonSchema
  drillsDue: { method: 'GET', path: '/api/drills/due' }, // -> drillsDueSchema
  setDrills: { method: 'POST', path: '/api/drills/settings' }, // drillSettingsSchema -> drillsDueSchema
  holding: { method: 'GET', path: '/api/holding' }, // -> holdingSchema
  answerOccasion: { method: 'POST', path: '/api/holding/answer' }, // answerOccasionAskSchema -> holdingSchema
  rollOfGauge: { method: 'GET', path: '/api/holding/roll' }, // rollAskSchema as query -> rollOfGaugeSchema
  leaf: { method: 'GET', path: '/api/leaf.html' }, // leafAskSchema as query -> text/html
  sendLeaf: { method: 'POST', path: '/api/leaf/send' }, // leafAskSchema -> contactsSchema
  networkLetter: { method: 'GET', path: '/api/network-letter.html' }, // networkLetterAskSchema as query -> text/html
  importPeople: { method: 'POST', path: '/api/people/import' }, // importPeopleAskSchema -> importedPeopleSchema
  exportPeople: { method: 'GET', path: '/api/people/file' }, // exportPeopleAskSchema as query -> text/csv or text/vcard
  duplicatePeople: { method: 'GET', path: '/api/people/duplicates' }, // -> duplicatePeopleSchema
  listKeys: { method: 'GET', path: '/api/keys' }, // -> keysSchema
  addKey: { method: 'POST', path: '/api/keys' }, // addKeyAskSchema -> keyMadeSchema, with the key this once
  revokeKey: { method: 'POST', path: '/api/keys/revoke' }, // revokeKeyAskSchema -> keysSchema
  auditTrail: { method: 'GET', path: '/api/audit' }, // auditAskSchema as query -> auditTrailSchema
} as const
