import { expect, test } from 'vitest'
import { pathsWithoutPlaces } from '@/app/ui/navigation'
import { type AppFile, appFiles, layoutsAround } from './appFiles'
import { importsOf } from './importsOf'

/**
 * Every page is the same for everybody: what it shows comes from the device's own store, or from a route that asks
 * who is there. So no role decides about a page, and nothing of the team's may be in one.
 */
const teamPages = [
  '/',
  '/api-help',
  '/ask',
  '/call',
  '/callbacks',
  '/case',
  '/case/end',
  '/case/history',
  '/case/shut-down',
  '/cases',
  '/cases/new',
  '/compare',
  '/equipment',
  '/equipment/add-maker',
  '/equipment/add-part',
  '/equipment/add-position',
  '/equipment/add-range',
  '/equipment/join',
  '/equipment/range',
  '/equipment/superseded',
  '/export',
  '/found-fitted',
  '/furnace',
  '/furnace/add',
  '/furnace/baseline',
  '/furnace/repair',
  '/gauges',
  '/gauges/add',
  '/helper',
  '/import',
  '/left-undone',
  '/letter',
  '/log',
  '/notice',
  '/people',
  '/phone-desk',
  '/photo',
  '/photo/read',
  '/preferences',
  '/record',
  '/report',
  '/reports',
  '/scan',
  '/set-aside',
  '/setpoint',
  '/settle',
  '/sources',
  '/swaps',
  '/t',
  '/tags',
  '/tokens',
  '/waiting',
  '/warranty',
  '/withdraw',
  '/withhold',
]
/** Pages for who is not signed in. */
const doorPages = ['/join', '/reset', '/set-up', '/sign-in']
/** The danger sheet is for whoever holds the device, signed in or not. */
const openPages = ['/danger']

const pages = appFiles('page')
const isTeamPage = (page: AppFile) => layoutsAround(page).some((layout) => layout.includes('(team)'))

test('every page of the team is known, and stands inside the layout that opens the device’s store', () => {
  expect(pages.filter(isTeamPage).map(({ address }) => address)).toEqual(teamPages)
})

test('every page outside is known: those of the door, where the navigation offers no places, and the danger sheet', () => {
  const outside = pages.filter((page) => !isTeamPage(page)).map(({ address }) => address)
  expect(outside).toEqual([...doorPages, ...openPages].sort())
  expect([...pathsWithoutPlaces].sort()).toEqual(doorPages)
})

// What a program can ask is the same on every server: the document of the interface, made from its schemas.
const interfaceDocument = ['lib/server/api/operations.ts', 'lib/server/api/setpointShapes.ts']

test.each(pages.map((page) => [page.address, page] as const))(
  '%s reads nothing on the server, so its page holds nothing of the team’s',
  (_address, page) => {
    const reached = [page.file, ...layoutsAround(page)].flatMap((file) => [...importsOf(file)])
    expect(reached.length).toBeGreaterThan(5)
    const onServer = reached.filter((file) => /^(lib\/server|prisma)\//.test(file))
    expect(onServer.filter((file) => !interfaceDocument.includes(file))).toEqual([])
  },
)
