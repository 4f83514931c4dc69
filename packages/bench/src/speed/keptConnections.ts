/** Requests over a bounded number of connections that stay open, as behind the proxy of a network with many phones. */
import { Agent, request } from 'node:http'

export interface Answered {
  status: number
  text: string
}

export class KeptConnections {
  readonly #agent: Agent

  /** @param most  open at once; further requests wait for one of them */
  constructor(most: number) {
    this.#agent = new Agent({ keepAlive: true, maxSockets: most })
  }

  post(url: string, headers: Record<string, string>, body: string): Promise<Answered> {
    return new Promise((resolve, reject) => {
      const asked = request(url, { method: 'POST', agent: this.#agent, headers }, (response) => {
        let text = ''
        response.setEncoding('utf8')
        response.on('data', (chunk: string) => {
          text += chunk
        })
        response.on('error', reject)
        response.on('end', () => resolve({ status: response.statusCode ?? 0, text }))
      })
      asked.on('error', reject)
      asked.end(body)
    })
  }

  close(): void {
    this.#agent.destroy()
  }
}
