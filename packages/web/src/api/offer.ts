/** What the public page, and the page of an own offer, ask of the desk. */
import type {
  ChangeMyOfferAsk,
  MakeOfferAsk,
  MyOffer,
  OfferGone,
  OfferMade,
  OfferPage,
  SaveMyYardAsk,
} from '@gaugewright/contract'
import { routes } from '@gaugewright/contract'
import { askDesk } from './askDesk.ts'

export const askOfferPage = () => askDesk<OfferPage>(routes.offerPage.path)
export const sendOffer = (ask: MakeOfferAsk) => askDesk<OfferMade>(routes.makeOffer.path, ask)
export const askMyOffer = (secret: string) => askDesk<MyOffer>(routes.myOffer.path, { secret })
export const changeMyOffer = (ask: ChangeMyOfferAsk) => askDesk<MyOffer>(routes.changeMyOffer.path, ask)
export const saveMyYard = (ask: SaveMyYardAsk) => askDesk<MyOffer>(routes.saveMyYard.path, ask)
export const withdrawMyOffer = (secret: string) => askDesk<OfferGone>(routes.withdrawMyOffer.path, { secret })
