import { expect, test } from 'vitest'
import { GET } from '@/app/api/openapi.json/route'
import { openApiDocument } from '@/lib/server/api/openApi'
import { operations } from '@/lib/server/api/operations'
import { appHandlers } from '../whole/appFiles'

type Parameter = { name: string; in: string; schema: object }
type Documented = { operationId: string; parameters?: Parameter[]; requestBody?: object; responses: object }
const paths = openApiDocument().paths as Record<string, Record<string, Documented>>
const documented = Object.entries(paths).flatMap(([path, methods]) =>
  Object.entries(methods).map(([method, operation]) => ({
    route: `${method.toUpperCase()} ${path}`,
    operation,
  })),
)

test('the document names every route under /api/v1, and no other', async () => {
  const routes = [...(await appHandlers()).keys()].filter((route) => route.includes(' /api/v1/'))
  expect(documented.map(({ route }) => route).sort()).toEqual(routes.sort())
  expect(routes).toHaveLength(operations.length)
})

test('each operation has an id of its own, its parameters by name, and an answer for every status', () => {
  expect(new Set(documented.map(({ operation }) => operation.operationId)).size).toBe(documented.length)
  const setpoint = paths['/api/v1/setpoint']!.get!
  expect(setpoint.parameters?.map(({ name }) => name)).toEqual([
    'part',
    'position',
    'furnace',
    'elevation',
    'revision',
    'serial',
  ])
  for (const { operation } of documented)
    expect(Object.keys(operation.responses)).toEqual(expect.arrayContaining(['200', '400', '401', '429']))
  expect(paths['/api/v1/cases']!.post!.requestBody).toBeDefined()
})

test('the document follows OpenAPI 3.1: its version, its required fields, and references that lead somewhere', async () => {
  // OpenAPI Specification 3.1.1, 4.8.1 (OpenAPI Object), 4.8.2 (Info), 4.8.12 (Parameter), 4.8.16 (Responses), 4.8.17 (Response).
  const response = GET()
  expect(response.headers.get('content-type')).toContain('application/json')
  const document = await response.json()
  expect(document.openapi).toMatch(/^3\.1\.\d$/)
  expect(document.info).toMatchObject({ title: expect.any(String), version: expect.any(String) })
  for (const { operation } of documented) {
    for (const parameter of operation.parameters ?? []) {
      expect(parameter).toMatchObject({ in: 'query', schema: expect.any(Object) })
    }
    for (const [status, answer] of Object.entries(operation.responses)) {
      expect(status).toMatch(/^[2-5]\d\d$/)
      expect(answer).toMatchObject({ description: expect.any(String), content: { 'application/json': {} } })
    }
  }
  for (const [, reference] of JSON.stringify(document).matchAll(/"\$ref":"#\/([^"]+)"/g)) {
    const target = reference!.split('/').reduce((at, step) => at?.[step], document)
    expect(target, reference).toBeDefined()
  }
})
