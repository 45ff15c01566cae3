/** Scenarios from the disk: a farm folder each, with a question, the figures expected, and variants that change some of its files. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Farm, type Problem, readFarmFolder, replay } from '@leywright/book';
import type { ExpectedFigure } from '@leywright/farm-kit';
import { asDay } from '@leywright/measures';
import { knownNames, type Plan, planFarm } from '@leywright/planner';

export const scenariosFolder = fileURLToPath(new URL('.', import.meta.url));

interface Expected {
  readonly today: string;
  readonly year?: number;
  readonly fromYear?: number;
  readonly toYear?: number;
  /** Where the expected figures come from. */
  readonly source: string;
  readonly figures: readonly ExpectedFigure[];
  readonly variants?: Readonly<
    Record<
      string,
      Partial<Pick<Expected, 'today' | 'year' | 'fromYear' | 'toYear'>> & {
        readonly figures: readonly ExpectedFigure[];
      }
    >
  >;
}

export interface Scenario {
  readonly folder: string;
  readonly name: string;
  readonly source: string;
  readonly figures: readonly ExpectedFigure[];
  /** The farm as read and the plan as made; worked out once. */
  readonly outcome: () => Outcome;
}

export interface Outcome {
  readonly farm: Farm | null;
  readonly problems: readonly Problem[];
  readonly plan: Plan | null;
}

/** All scenarios and their variants, by name. */
export function allScenarios(): readonly Scenario[] {
  return readdirSync(scenariosFolder)
    .sort()
    .filter((name) => existsSync(join(scenariosFolder, name, 'expected.json')))
    .flatMap(scenariosIn);
}

function scenariosIn(name: string): readonly Scenario[] {
  const folder = join(scenariosFolder, name);
  const expected = JSON.parse(readFileSync(join(folder, 'expected.json'), 'utf8')) as Expected;
  const { variants = {}, ...base } = expected;
  const files = farmFiles(folder);
  const own: Scenario = scenario(folder, name, base, files);
  return [
    own,
    ...Object.entries(variants).map(([variant, changes]) => {
      const over = join(folder, 'variants', variant);
      return scenario(
        folder,
        `${name}, ${variant}`,
        { ...base, ...changes },
        new Map([...files, ...(existsSync(over) ? farmFiles(over) : [])]),
      );
    }),
  ];
}

function scenario(folder: string, name: string, expected: Expected, files: ReadonlyMap<string, Uint8Array>): Scenario {
  let outcome: Outcome | null = null;
  return {
    folder,
    name,
    source: expected.source,
    figures: expected.figures,
    outcome: () => {
      outcome ??= outcomeOf(files, expected);
      return outcome;
    },
  };
}

function outcomeOf(files: ReadonlyMap<string, Uint8Array>, { today, year, fromYear, toYear }: Expected): Outcome {
  const reading = readFarmFolder(files, knownNames());
  if (reading.farm === null) return { farm: null, problems: reading.problems, plan: null };
  const { farm, findings: book } = replay(reading.farm, reading.entries);
  const wish = {
    today: asDay(today),
    book,
    ...(year === undefined ? {} : { year }),
    ...(fromYear === undefined ? {} : { fromYear }),
    ...(toYear === undefined ? {} : { toYear }),
  };
  return { farm, problems: reading.problems, plan: planFarm(farm, wish) };
}

const notOfTheFarm = ['question.md', 'expected.json', 'expected-rotation.json', 'expected-changed.md'];

/** The files of a farm folder as bytes, by their path in it; what belongs to the scenario and not to the farm is left out. */
export function farmFiles(folder: string): ReadonlyMap<string, Uint8Array> {
  const files = new Map<string, Uint8Array>();
  for (const name of readdirSync(folder).sort()) {
    const path = join(folder, name);
    if (statSync(path).isFile() && !notOfTheFarm.includes(name)) files.set(relative(folder, path), readFileSync(path));
  }
  return files;
}
