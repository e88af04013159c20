/**
 * The order of the rooms, written once. Each room knows only rooms that stand before it; rooms on one line
 * (`reconciliation` and `tracing`; `complaints` and `recalls`; `cli` and `demo`) do not know each other.
 */
const order = [
  ['core'],
  ['platform'],
  ['journal'],
  ['plant'],
  ['people'],
  ['open-points'],
  ['drying'],
  ['laboratory'],
  ['disposition'],
  ['packing'],
  ['line-checks'],
  ['fill-weight'],
  ['hopper'],
  ['pallets'],
  ['dispatch'],
  ['reconciliation', 'tracing'],
  ['complaints', 'recalls'],
  ['desks'],
  ['cli', 'demo'],
];

const roomRules = order.flatMap((rooms, place) =>
  rooms.map((room) => {
    const known = order.slice(0, place).flat().concat(room);
    return {
      name: `order-of-the-rooms-${room}`,
      comment: `${room} knows only what stands before it in the house`,
      severity: 'error',
      from: { path: `^src/${room}/`, pathNot: '\\.spec\\.tsx?$' },
      to: { path: '^src/[^/]+/', pathNot: `^src/(${known.join('|')})/` },
    };
  }),
);

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...roomRules,
    {
      name: 'no-circles',
      severity: 'error',
      from: { path: '^src/' },
      to: { circular: true },
    },
    {
      name: 'core-knows-only-core',
      severity: 'error',
      from: { path: '^src/core/', pathNot: '\\.spec\\.ts$' },
      to: { pathNot: '^src/core/' },
    },
    {
      name: 'browser-modules-know-only-core',
      severity: 'error',
      from: { path: '^src/platform/web/client/' },
      to: { pathNot: '^src/(core|platform/web/client)/' },
    },
    {
      name: 'no-page-of-the-server-takes-browser-modules',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/platform/web/client/' },
      to: { path: '^src/platform/web/client/' },
    },
    {
      name: 'pages-and-labels-know-no-framework',
      severity: 'error',
      from: { path: '\\.(page|label|paper)\\.tsx?$' },
      to: { path: 'node_modules/(typeorm|@nestjs)/|\\.entity\\.ts$' },
    },
    {
      name: 'one-door-for-changes',
      comment:
        'only recordChange, sessions, proofs of queues, the count of interruptions, the outbox and the batches of fill weights open a unit of work',
      severity: 'error',
      from: {
        path: '^src/',
        pathNot: [
          '\\.spec\\.tsx?$',
          '^src/platform/',
          '^src/journal/record-change\\.ts$',
          '^src/people/sessions\\.ts$',
          '^src/people/queue-proofs\\.ts$',
          '^src/people/throttle\\.ts$',
          '^src/open-points/count-interruptions\\.ts$',
          '^src/hopper/refusals-met\\.ts$',
          '^src/fill-weight/weight-batches\\.ts$',
          '^src/fill-weight/files/weight-files\\.ts$',
          '^src/fill-weight/kept/seal-weights\\.ts$',
          '^src/cli/rebuild-(courses|weights)\\.main\\.ts$',
        ],
      },
      to: { path: '^src/platform/database/unit-of-work\\.ts$', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'a-plant-knows-no-demo',
      comment: 'what makes a browser a device by one press is built onto the house by the demo alone',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/demo/' },
      to: { path: '^src/demo/' },
    },
    {
      name: 'not-to-spec',
      severity: 'error',
      from: { path: '^src/', pathNot: '\\.spec\\.tsx?$' },
      to: { path: '\\.spec\\.tsx?$' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
