/** A photo that was opened in the browser: its pixels, and what it says of its lens. */
export interface Opened {
  file: File
  url: string
  widthPx: number
  heightPx: number
  /** Null where the photo does not say. */
  equivalentMm: number | null
}
