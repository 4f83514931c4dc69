/** A page that reads the OpenAPI description to people. Plain HTML: it needs no program, and works without colour. */
import type { createDocument } from 'zod-openapi'
import { machineBase } from './operations.ts'

type Description = ReturnType<typeof createDocument>
interface Schema {
  $ref?: string
  type?: string | string[]
  description?: string
  enum?: unknown[]
  const?: unknown
  format?: string
  items?: Schema
  anyOf?: Schema[]
  oneOf?: Schema[]
  properties?: Record<string, Schema>
  required?: string[]
  example?: unknown
}
interface Parameter {
  name: string
  in: string
  required?: boolean
  schema?: Schema
  description?: string
}
interface Body {
  content?: Record<string, { schema?: Schema; example?: unknown }>
}
interface Described {
  operationId: string
  summary: string
  description: string
  parameters?: Parameter[]
  requestBody?: Body
  responses: Record<string, Body & { description: string }>
}

export function drawPage(description: Description): string {
  const { info } = description
  const operations = Object.entries(description.paths ?? {}).flatMap(([path, ways]) =>
    Object.entries(ways as Record<string, Described>).map(([way, operation]) => ({ path, way, operation })),
  )
  const schemas = (description.components?.schemas ?? {}) as Record<string, Schema>
  const contents = operations
    .map(
      ({ path, way, operation }) =>
        `<li><a href="#${operation.operationId}">${text(operation.summary)}</a> <code>${way.toUpperCase()} ${text(machineBase + path)}</code></li>`,
    )
    .join('\n')
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${text(info.title)}</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="${machineBase}/page.css">
</head>
<body>
<main>
<h1>${text(info.title)}</h1>
<p>Version ${text(info.version)}. ${prose(info.description ?? '')}</p>
<p>The same for programs: <a href="${machineBase}/openapi.json">openapi.json</a> (OpenAPI ${text(description.openapi)}).</p>
<nav aria-label="What can be asked"><ul>
${contents}
</ul></nav>
${operations.map(({ path, way, operation }) => drawOperation(path, way, operation)).join('\n')}
<h2 id="shapes">Shapes</h2>
${Object.entries(schemas)
  .map(([name, schema]) => `<h3 id="shape-${text(name)}">${text(name)}</h3>\n${drawShape(schema)}`)
  .join('\n')}
</main>
</body>
</html>
`
}

function drawOperation(path: string, way: string, operation: Described): string {
  const parameters = operation.parameters ?? []
  const asked = operation.requestBody?.content?.['application/json']
  const rows = parameters.map((one) =>
    drawRow(
      one.name,
      `${one.in}, ${wordType(one.schema ?? {})}`,
      one.required === true,
      one.description ?? one.schema?.description,
    ),
  )
  return `<section aria-labelledby="${operation.operationId}">
<h2 id="${operation.operationId}">${text(operation.summary)}</h2>
<p><code><span class="way">${way}</span> ${text(machineBase + path)}</code></p>
<p>${prose(operation.description)}</p>
${rows.length === 0 ? '' : `<h3>Asked with</h3>\n${drawTable(rows)}`}
${asked === undefined ? '' : `<h3>Body</h3>\n<p>${wordType(asked.schema ?? {})}</p>\n<pre tabindex="0"><code>${text(JSON.stringify(asked.example, null, 2))}</code></pre>`}
<h3>Answers</h3>
${drawTable(Object.entries(operation.responses).map(([status, body]) => drawRow(status, wordType(body.content?.['application/json']?.schema ?? {}), null, body.description)))}
</section>`
}

function drawShape(schema: Schema): string {
  const lead = schema.description === undefined ? '' : `<p>${prose(schema.description)}</p>\n`
  const required = new Set(schema.required ?? [])
  const rows = Object.entries(schema.properties ?? {}).map(([name, field]) =>
    drawRow(name, wordType(field), required.has(name), field.description),
  )
  return lead + (rows.length === 0 ? `<p>${wordType(schema)}</p>` : drawTable(rows))
}

function drawTable(rows: string[]): string {
  return `<div class="wide" tabindex="0" role="group" aria-label="Table"><table><tbody>\n${rows.join('\n')}\n</tbody></table></div>`
}

/** @param isNeeded  null where nothing is said about it; `type` is HTML already */
function drawRow(name: string, type: string, isNeeded: boolean | null, description: string | undefined): string {
  const needed = isNeeded === null ? '' : isNeeded ? ', needed' : ', may be left out'
  return `<tr><th scope="row"><code>${text(name)}</code></th><td>${type}${needed}</td><td>${prose(description ?? '')}</td></tr>`
}

/** The type of a field in words, as HTML. */
function wordType(schema: Schema): string {
  if (schema.$ref !== undefined) {
    const name = schema.$ref.split('/').at(-1) ?? ''
    return `<a href="#shape-${text(name)}">${text(name)}</a>`
  }
  const either = schema.anyOf ?? schema.oneOf
  if (either !== undefined) return either.map(wordType).join(' or ')
  if (schema.enum !== undefined) return schema.enum.map((value) => `<code>${text(String(value))}</code>`).join(', ')
  if (schema.const !== undefined) return `<code>${text(String(schema.const))}</code>`
  if (schema.type === 'array') return `list of ${wordType(schema.items ?? {})}`
  if (schema.type === 'object' && schema.properties !== undefined) {
    return `with ${Object.entries(schema.properties)
      .map(([name, field]) => `<code>${text(name)}</code> (${wordType(field)})`)
      .join(', ')}`
  }
  const type = Array.isArray(schema.type) ? schema.type.join(' or ') : (schema.type ?? 'anything')
  return text(schema.format === undefined ? type : `${type}, ${schema.format}`)
}

/** Escaped, with what stands in backticks as code. */
function prose(words: string): string {
  return text(words).replaceAll(/`([^`]+)`/g, '<code>$1</code>')
}

function text(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
}
