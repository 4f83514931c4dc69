/** The bytes of a file in base64. */
export async function base64Of(file: Blob): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer())
  let binary = ''
  // In parts: the arguments of a call are limited.
  for (let from = 0; from < bytes.length; from += 0x8000)
    binary += String.fromCharCode(...bytes.subarray(from, from + 0x8000))
  return btoa(binary)
}
