/** Places where rain is caught, on the basin's plane. Arrays of one length; m. */
export interface Sites {
  count: number
  xM: Float64Array
  yM: Float64Array
  elevationM: Float64Array
}
