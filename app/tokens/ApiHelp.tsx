import { z } from 'zod'
import { type Operation, operations } from '@/lib/server/api/operations'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import styles from './tokens.module.css'

/** What an office program can ask, for whoever sets one up: made from the same schemas as the document for programs. */
export function ApiHelp() {
  return (
    <Stack>
      <PageHeader
        above={<a href="/tokens">Tokens</a>}
        title="What a program can ask"
        lead="Each request carries a token that a manager made. Every answer is JSON; a refusal says what, why, and what to do."
        actions={<a href="/api/openapi.json">The same for programs (OpenAPI)</a>}
      />
      <Sheet title="How to send a token">
        <p>
          With each request, in the header: <code>Authorization: Bearer TOKEN</code>. A cookie counts for
          nothing here. Sixty requests at once and two a second are let in; then the answer is 429, and says
          how long to wait.
        </p>
      </Sheet>
      {operations.map((operation) => (
        <OperationSheet key={operation.id} operation={operation} />
      ))}
    </Stack>
  )
}

function OperationSheet({ operation }: { operation: Operation }) {
  const { method, path, summary, description, query, body, right, refusals } = operation
  return (
    <Sheet
      title={summary}
      sub={
        <code translate="no">
          {method} {path}
        </code>
      }
    >
      <p>{description}</p>
      {query !== undefined && <Fields title="In the address" schema={query} />}
      {body !== undefined && <Fields title="In the body" schema={body} />}
      <h3>Answers</h3>
      <ul className={styles.answers}>
        {Object.entries({ ...right, ...refusals }).map(([status, words]) => (
          <li key={status}>
            {status}: {words}
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

function Fields({ title, schema }: { title: string; schema: z.ZodObject }) {
  const { properties = {}, required = [] } = z.toJSONSchema(schema) as {
    properties?: Record<
      string,
      { description?: string; enum?: string[]; format?: string; maxLength?: number }
    >
    required?: string[]
  }
  return (
    <>
      <h3>{title}</h3>
      <dl className={styles.fields}>
        {Object.entries(properties).map(([name, { description, enum: words, format, maxLength }]) => (
          <div key={name}>
            <dt>
              <code translate="no">{name}</code>
              {required.includes(name) ? '' : ', may be left out'}
            </dt>
            <dd>
              {[
                description,
                words && `one of: ${words.join(', ')}`,
                format && `format ${format}`,
                maxLength && `at most ${maxLength.toLocaleString('en')} characters`,
              ]
                .filter(Boolean)
                .join('; ')}
            </dd>
          </div>
        ))}
      </dl>
    </>
  )
}
