import { useStored } from '../../hooks/useStored.ts'
import { readScale } from './screenScale.ts'

const KEY = 'gaugewright.devicePxPerMm'

/** The true scale of this screen, kept on the phone; null until a card was held against it. Device pixels in a millimetre. */
export function useScreenScale(): [number | null, (devicePxPerMm: number | null) => void] {
  const [text, setText] = useStored(KEY, '')
  return [readScale(text), (devicePxPerMm) => setText(devicePxPerMm === null ? '' : devicePxPerMm.toFixed(4))]
}
