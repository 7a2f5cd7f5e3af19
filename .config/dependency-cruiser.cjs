/** The arrows of the house: who may import what. tests/arrows.mjs runs this and counts what it saw. */
const only = (name, from, allowed, comment) => ({
  name,
  comment,
  severity: 'error',
  from: { path: from },
  to: { path: '^(app|lib|prisma|seed-demo|tests)/', pathNot: allowed },
})
const noPackage = (name, from, allowed, comment) => ({
  name,
  comment,
  severity: 'error',
  from: { path: from },
  to: { dependencyTypes: ['npm', 'npm-dev', 'core'], pathNot: allowed },
})

module.exports = {
  forbidden: [
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } } },
    only('core-is-pure', '^lib/core/', '^lib/core/', 'The core imports nothing of ours but the core.'),
    noPackage(
      'core-packages',
      '^lib/core/(?!find/)',
      'node_modules/(zod|@stdlib)/',
      'The core uses zod and numeric libraries, and no module of Node.',
    ),
    noPackage('find-packages', '^lib/core/find/', 'node_modules/(zod|fuse\\.js)/', 'Only find uses fuse.js.'),
    only('catalogue-on-core', '^lib/catalogue/', '^lib/(core|catalogue)/', 'The catalogue is data on the core.'),
    only('records-on-core', '^lib/records/', '^lib/(core|catalogue|records)/', 'Records are shared by device and server.'),
    only('server-on-records', '^lib/server/', '^(lib/(core|catalogue|records|server)|prisma)/', 'The server never imports the device or the screens.'),
    only('device-on-records', '^lib/device/', '^lib/(core|catalogue|records|device)/', 'The device never imports the server.'),
    {
      name: 'client-never-server',
      comment: 'Components that run in the browser live in app/ui and in files named *Screen.tsx.',
      severity: 'error',
      from: { path: '^app/(ui/|device/|.*Screen\\.tsx$)' },
      to: { path: '^(lib/server|prisma)/' },
    },
    only('app-on-lib', '^app/', '^(app|lib)/', 'Screens read the database through lib/server.'),
    only('seed-on-lib', '^seed-demo/', '^(seed-demo|lib)/', 'The demo is loaded through the same door as real records.'),
    {
      name: 'product-never-tests',
      severity: 'error',
      from: { path: '^(app|lib|prisma|seed-demo)/' },
      to: { path: '^tests/' },
    },
    { name: 'nothing-missing', severity: 'error', from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    doNotFollow: { path: 'node_modules|\\.next|prisma/generated' },
    exclude: { path: '\\.next/|next-env' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'default', 'types'] },
  },
}
