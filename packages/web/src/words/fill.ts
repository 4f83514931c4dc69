/** Put values into the `{name}` places of a message. An unknown place stays as it is, so that it is seen. */
export function fill(message: string, values: Record<string, string | number>): string {
  return message.replace(/\{(\w+)\}/g, (place, name: string) => String(values[name] ?? place))
}
