/** What the desk takes. The phone draws each photo anew within these before it leaves. */
export const photoLimits = {
  /** Of one image as sent, after base64 is undone. */
  bytes: 3 * 1024 * 1024,
  /** Longest side of the photo kept; larger ones are made smaller. */
  sidePx: 2048,
  /** Pixels of an image that is opened at all. */
  pixels: 40_000_000,
  perReport: 6,
} as const
