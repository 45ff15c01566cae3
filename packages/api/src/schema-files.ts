/** What `--json` prints, as JSON Schema: the files of docs/schema, by name. */
import { z } from 'zod';
import { covers } from './shapes/covers.ts';
import { toldWhy } from './shapes/finding.ts';
import { calcAnswer, calcModels, checkedRows, folderProblems } from './shapes/http.ts';
import { plan } from './shapes/plan.ts';
import { balances, trace } from './shapes/proof.ts';
import { rotation } from './shapes/rotation.ts';
import { exported, findings, imported, verified } from './shapes/told.ts';
import { dayOfWork, orders, work } from './shapes/work.ts';

const shapes: Readonly<Record<string, z.ZodType>> = {
  plan,
  check: findings,
  why: toldWhy,
  calc: calcAnswer,
  rotation,
  covers,
  'calc-list': calcModels,
  'calc-checks': checkedRows,
  import: imported,
  export: exported,
  trace,
  balance: balances,
  'verify-book': verified,
  problems: folderProblems,
  work,
  day: dayOfWork,
  order: orders,
};

/** Text of each file, `plan.json` and so on. */
export function schemaFiles(): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(shapes).map(([name, shape]) => [
      `${name}.json`,
      `${JSON.stringify(z.toJSONSchema(shape, { target: 'draft-2020-12' }), null, 2)}\n`,
    ]),
  );
}
