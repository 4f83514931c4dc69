/** People as the screen asks for them: offers, observers, contacts, letters, the public page. */
import type {
  AddContactAsk,
  Candidate,
  Contacts,
  GiveGaugeAsk,
  LetterPreview,
  LetterStep,
  LetterTemplates,
  MoveOfferAsk,
  Offer,
  OfferGone,
  OfferPageSettings,
  OfferPageWords,
  PeopleDesk,
  SendLetterAsk,
  SetLetterAsk,
  UndoOfferAsk,
  WithdrawContactAsk,
} from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { queryOptions } from '@tanstack/react-query'
import { askDesk } from './askDesk.ts'

export const peopleKey = ['people desk'] as const
export const contactsKey = (about: string) => ['contacts', about] as const

export const peopleQuery = queryOptions({
  queryKey: peopleKey,
  queryFn: ({ signal }) => askDesk<PeopleDesk>(routes.peopleDesk.path, undefined, signal),
})

export const contactsQuery = (about: string) =>
  queryOptions({
    queryKey: contactsKey(about),
    queryFn: ({ signal }) =>
      askDesk<Contacts>(`${routes.listContacts.path}?about=${encodeURIComponent(about)}`, undefined, signal),
  })

export const previewQuery = (about: string, step: LetterStep, occasion?: string) =>
  queryOptions({
    queryKey: ['letter', about, step, occasion ?? ''],
    queryFn: ({ signal }) => {
      const asked = new URLSearchParams({ about, step, ...(occasion !== undefined && { occasion }) })
      return askDesk<LetterPreview>(`${routes.previewLetter.path}?${asked}`, undefined, signal)
    },
    staleTime: 0,
  })

export const lettersQuery = queryOptions({
  queryKey: ['letters'],
  queryFn: ({ signal }) => askDesk<LetterTemplates>(routes.listLetters.path, undefined, signal),
})

export const offerPageQuery = queryOptions({
  queryKey: ['offer page'],
  queryFn: ({ signal }) => askDesk<OfferPageSettings>(routes.readOfferPage.path, undefined, signal),
})

export const addOffer = (offer: Offer) => askDesk<Candidate>(routes.addOffer.path, { offer })
export const changeOffer = (ask: { candidateId: string; offer: Offer }) =>
  askDesk<Candidate>(routes.changeOffer.path, ask)
export const moveOffer = (ask: MoveOfferAsk) => askDesk<Candidate>(routes.moveOffer.path, ask)
export const undoOffer = (ask: UndoOfferAsk) => askDesk<Candidate>(routes.undoOffer.path, ask)
export const giveGauge = (ask: GiveGaugeAsk) => askDesk<Candidate>(routes.giveGauge.path, ask)
export const forgetCandidate = (candidateId: string) => askDesk<OfferGone>(routes.forgetCandidate.path, { candidateId })
export const addContact = (ask: AddContactAsk) => askDesk<Contacts>(routes.addContact.path, ask)
export const withdrawContact = (ask: WithdrawContactAsk) => askDesk<Contacts>(routes.withdrawContact.path, ask)
export const sendLetter = (ask: SendLetterAsk) => askDesk<Contacts>(routes.sendLetter.path, ask)
export const setLetter = (ask: SetLetterAsk) => askDesk<LetterTemplates>(routes.setLetter.path, ask)
export const setOfferPage = (ask: OfferPageWords) => askDesk<OfferPageSettings>(routes.setOfferPage.path, ask)
