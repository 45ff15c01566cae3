/**
 * Finds one figure in a plan by a path that a person can read:
 *
 *   supply.needs[crop=carrot-maincrop].areaM2      the first row that says so, then its figure
 *   findings[code=box-short,place.week=2027-w24]   several conditions; a condition may look deeper
 *   findings[code=box-short]#                      how many rows say so
 *   ground.area.netM2+                             the sum of that figure over all rows
 *   years[0].households                            by place
 *   a.b / c.d                                      one figure over another
 */
export type Found =
  | { readonly kind: 'found'; readonly value: unknown }
  | { readonly kind: 'nothing-there'; readonly at: string };

/** The value at the path; what was missing, when nothing is there. Throws only when the path itself cannot be read. */
export function figureAt(root: unknown, path: string): Found {
  const [above, below] = path.split(' / ');
  if (below === undefined) return walk(root, path);
  const over = figureAt(root, above ?? '');
  const under = figureAt(root, below);
  if (over.kind === 'nothing-there') return over;
  if (under.kind === 'nothing-there') return under;
  return { kind: 'found', value: Number(over.value) / Number(under.value) };
}

interface Step {
  readonly name: string;
  readonly conditions: readonly (readonly [path: string, value: string])[];
  readonly place: number | null;
}

const stepShape = /^([A-Za-z_][\w-]*)?(?:\[([^\]]*)\])?$/;

function walk(root: unknown, path: string): Found {
  const ending = /[#+]$/.exec(path)?.[0] ?? null;
  const steps = stepsOf(ending === null ? path : path.slice(0, -1));
  if (ending === '#') return countOf(root, steps, path);
  if (ending === '+') return sumOf(root, steps, path);
  let at: unknown = root;
  for (const step of steps) {
    at = rowsOrValue(at, step);
    if (Array.isArray(at) && step.conditions.length > 0) at = at[0];
    if (at === undefined) return { kind: 'nothing-there', at: path };
  }
  return { kind: 'found', value: at };
}

function countOf(root: unknown, steps: readonly Step[], path: string): Found {
  const rows = rowsAt(root, steps);
  return rows === null ? { kind: 'nothing-there', at: path } : { kind: 'found', value: rows.length };
}

function sumOf(root: unknown, steps: readonly Step[], path: string): Found {
  for (let count = 1; count < steps.length; count += 1) {
    const rows = rowsAt(root, steps.slice(0, count));
    if (rows === null) continue;
    const rest = steps.slice(count);
    return {
      kind: 'found',
      value: rows.reduce<number>((sum, row) => sum + Number(rest.reduce<unknown>(rowsOrValue, row) ?? 0), 0),
    };
  }
  return { kind: 'nothing-there', at: path };
}

function rowsAt(root: unknown, steps: readonly Step[]): readonly unknown[] | null {
  let at: unknown = root;
  steps.forEach((step, index) => {
    at = rowsOrValue(at, step);
    if (Array.isArray(at) && step.conditions.length > 0 && index < steps.length - 1) at = at[0];
  });
  return Array.isArray(at) ? at : null;
}

function rowsOrValue(at: unknown, step: Step): unknown {
  const value = step.name === '' ? at : property(at, step.name);
  if (step.place !== null) return Array.isArray(value) ? value[step.place] : undefined;
  if (step.conditions.length === 0) return value;
  return Array.isArray(value)
    ? value.filter((row) => step.conditions.every(([path, wanted]) => String(deep(row, path)) === wanted))
    : undefined;
}

function deep(row: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((at, name) => property(at, name), row);
}

function property(of: unknown, name: string): unknown {
  return typeof of === 'object' && of !== null ? (of as Record<string, unknown>)[name] : undefined;
}

/** Splits at the points outside brackets. */
function stepsOf(path: string): readonly Step[] {
  return path.split(/\.(?![^[]*\])/).map((text) => {
    const match = stepShape.exec(text);
    if (match === null) throw new Error(`"${text}" in "${path}" is no step of a path.`);
    const inside = match[2];
    const place = inside !== undefined && /^\d+$/.test(inside) ? Number(inside) : null;
    const conditions =
      inside === undefined || place !== null
        ? []
        : inside.split(',').map((one) => {
            const equals = one.indexOf('=');
            if (equals < 1) throw new Error(`"${one}" in "${path}" is no condition; write name=value.`);
            return [one.slice(0, equals), one.slice(equals + 1)] as const;
          });
    return { name: match[1] ?? '', conditions, place };
  });
}
