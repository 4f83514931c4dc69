/** The lines of a body as they come, without their ends; the last one too where nothing ends it. */
export async function* readLines(body: ReadableStream<Uint8Array>): AsyncGenerator<string> {
  const reader = body.getReader()
  const decoder = new TextDecoder()
  let rest = ''
  try {
    for (;;) {
      const { done, value } = await reader.read()
      rest += done ? decoder.decode() : decoder.decode(value, { stream: true })
      const lines = rest.split('\n')
      rest = lines.pop() ?? ''
      yield* lines
      if (done) break
    }
    if (rest !== '') yield rest
  } finally {
    reader.releaseLock()
  }
}
