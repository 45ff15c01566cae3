// The law of the tree in one place: who may import whom, and how large things may grow. docs/decisions/0001 says why.

/** Package → the packages of ours it may import. Applies to src; tests may use farm-kit as well. */
export const mayImport: Readonly<Record<string, readonly string[]>> = {
  measures: [],
  agronomy: ['measures'],
  book: ['measures'],
  planner: ['measures', 'agronomy', 'book'],
  api: ['measures', 'book', 'planner'],
  store: ['measures', 'book'],
  server: ['measures', 'agronomy', 'book', 'planner', 'api', 'store'],
  cli: ['measures', 'agronomy', 'book', 'planner', 'api', 'store', 'server'],
  web: ['measures', 'agronomy', 'book', 'planner', 'api'],
  'farm-kit': ['measures', 'agronomy', 'book', 'planner'],
};

/** These run unchanged in Node, in a worker and on a phone, so they know no clock, file, network, chance or screen. */
export const purePackages: readonly string[] = ['measures', 'agronomy', 'book', 'planner', 'api'];

export const sizes = {
  fileLines: 300,
  testFileLines: 500,
  functionLines: 60,
  filesInFolder: 12,
  foldersUnderSrc: 2,
  frontDoorNames: 40,
} as const;

/** Names that say nothing about what is inside. */
export const emptyNames: readonly string[] = [
  'util',
  'utils',
  'helper',
  'helpers',
  'common',
  'shared',
  'misc',
  'manager',
  'managers',
  'data',
  'info',
];
