// A number's name ends in its unit. Walks every exported number of agronomy and planner: constants, members, parameters.
import { isNode, nameOf, type Offence, type SourceFile, type SyntaxNode, walk } from './read-tree.ts';

/** Last words that are units, or end in one: kgHa, mjM2, tHa, kgM2, cPerM. */
const unitWords = new Set(
  (
    'm2 m3 ha a t kg g mg ug m mm cm km l ml c cd h min s ms day days week weeks month months year years pct ppm deg rad ' +
    'kpa hpa pa mj j kj w kwh mol ph eur minor gj pence person workday'
  ).split(' '),
);

/** Last words that need no unit: parts of one, counts, places in an order, days in the calendar, members of a range. */
const unitlessWords = new Set(
  (
    'share fraction ratio factor coefficient count index number rank seq version seed order exponent weight score odds probability ' +
    'low high typ mid mean sd best worst min max least most value result total of x y z a b weekday per ' +
    'ndvi kc kcb ks ke ccx cc albedo r2'
  ).split(' '),
);

/** Plurals of these are not counts of things: "areas" has a unit as much as "area". */
const quantityWords = new Set(
  (
    'rain area mass weight yield length width depth height temperature temp time duration rate dose speed wind radiation pressure ' +
    'volume water money price cost amount quantity spacing distance sowing need supply loss store stock moisture size'
  ).split(' '),
);

/** What a unit may be counted for one of: kilograms a household, hours a box. */
const ofOne = new Set('household box plant bed row harvest drop round person plot'.split(' '));

const RULE = 'a number’s name ends in its unit';
const REMEDY =
  'write the unit at the end, as in rainMm, areaM2, yieldTHa, nLeftKgHa, lossShare, gapWeeks; a count is a plural (seeds, rows); ' +
  'a unit we do not have yet goes into checks/law/units.ts';

/** Names the trade reads without a unit, each with what it counts. A new one needs its reason here. */
const understoodNames: Readonly<Record<string, string>> = {
  winter: 'a winter has the number of the year it ends in',
  toPutRight: 'a count of findings',
  promised: 'a count of items',
  recorded: 'a count of records',
  byLabour: 'a count of households',
  nth: 'a place in an order',
};

/** 'nReleasedKgHa' → true; 'rain' → false. */
export function saysItsUnit(name: string): boolean {
  if (Object.hasOwn(understoodNames, name)) return true;
  if (name === name.toUpperCase()) return saysItsUnit(camelCase(name));
  const words = (name.match(/[A-Z]?[a-z]+\d*|[A-Z]+(?![a-z])\d*|\d+/g) ?? []).map((word) => word.toLowerCase());
  const last = words.at(-1) ?? '';
  if (unitWords.has(last) || unitlessWords.has(last)) return true;
  if (unitWords.has(words.at(-2) ?? '')) return ofOne.has(last); // kgHousehold, packingHBox
  if (isCount(last) || isCount(words[0] ?? '')) return true; // seeds, seedsWithMargin
  return words.at(-2) === 'per'; // plantsPerBed
}

/** 'seeds' → true; 'areas' and 'losses' are not counts, and want their unit as much as 'area' and 'loss'. */
function isCount(word: string): boolean {
  if (!word.endsWith('s') || word.endsWith('ss')) return false;
  return ![word.replace(/s$/, ''), word.replace(/es$/, ''), word.replace(/ies$/, 'y')].some((one) =>
    quantityWords.has(one),
  );
}

function camelCase(constant: string): string {
  return constant.toLowerCase().replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());
}

export function unitOffences(file: SourceFile): readonly Offence[] {
  if (file.place !== 'src' || (file.packageName !== 'agronomy' && file.packageName !== 'planner')) return [];
  return exportedNumbers(file.program)
    .filter((one) => !saysItsUnit(one.name))
    .map((one) => ({
      path: file.path,
      line: file.lineAt(one.start),
      rule: RULE,
      found: `the number "${one.name}" does not say its unit`,
      remedy: REMEDY,
    }));
}

interface NamedNumber {
  readonly name: string;
  readonly start: number;
}

function exportedNumbers(program: SyntaxNode): readonly NamedNumber[] {
  const numbers: NamedNumber[] = [];
  for (const statement of program['body'] as readonly SyntaxNode[]) {
    const declaration = statement['declaration'];
    if (statement.type !== 'ExportNamedDeclaration' || !isNode(declaration)) continue;
    if (declaration.type === 'FunctionDeclaration') numbers.push(...numbersAmong(declaration['params']));
    else if (declaration.type === 'VariableDeclaration') numbers.push(...numberConstants(declaration));
    else if (/^TS(Interface|TypeAlias)Declaration$/.test(declaration.type)) numbers.push(...numberMembers(declaration));
  }
  return numbers;
}

function numbersAmong(params: unknown): readonly NamedNumber[] {
  return (params as readonly SyntaxNode[]).flatMap((param) => {
    const target = param.type === 'AssignmentPattern' ? (param['left'] as SyntaxNode) : param;
    const name = nameOf(target);
    return name !== null && isNumeric(target['typeAnnotation']) ? [{ name, start: target.start }] : [];
  });
}

function numberConstants(declaration: SyntaxNode): readonly NamedNumber[] {
  return (declaration['declarations'] as readonly SyntaxNode[]).flatMap((one) => {
    const target = one['id'] as SyntaxNode;
    const name = nameOf(target);
    if (name === null) return [];
    const value = one['init'];
    if (isNode(value) && value.type === 'ArrowFunctionExpression') return numbersAmong(value['params']);
    const isNumber = (isNode(value) && typeof value['value'] === 'number') || isNumeric(target['typeAnnotation']);
    return isNumber ? [{ name, start: target.start }] : [];
  });
}

function numberMembers(declaration: SyntaxNode): readonly NamedNumber[] {
  const numbers: NamedNumber[] = [];
  walk(declaration, (node, parent) => {
    if (node.type !== 'TSPropertySignature' || !isNumeric(node['typeAnnotation'])) return;
    const name = nameOf(node['key']);
    if (name !== null && !(/amount|quantity|value/i.test(name) && hasUnitBeside(node, parent)))
      numbers.push({ name, start: node.start });
  });
  return numbers;
}

/** `amount` beside `amountUnit` or `unit` has its unit in the next member. */
function hasUnitBeside(member: SyntaxNode, parent: SyntaxNode | null): boolean {
  const members = parent?.['members'] ?? parent?.['body'];
  return (
    Array.isArray(members) &&
    members.some((one: SyntaxNode) => one !== member && /unit$/i.test(nameOf(one['key']) ?? ''))
  );
}

/** number, number | null, readonly number[], Interval, Float64Array. */
function isNumeric(annotation: unknown): boolean {
  if (!isNode(annotation)) return false;
  switch (annotation.type) {
    case 'TSTypeAnnotation':
    case 'TSTypeOperator':
    case 'TSParenthesizedType':
      return isNumeric(annotation['typeAnnotation']);
    case 'TSArrayType':
      return isNumeric(annotation['elementType']);
    case 'TSUnionType':
      return (annotation['types'] as readonly unknown[]).some(isNumeric);
    case 'TSTypeReference':
      return /^(Interval|Float(32|64)Array|U?[Ii]nt(8|16|32)Array)$/.test(nameOf(annotation['typeName']) ?? '');
    default:
      return annotation.type === 'TSNumberKeyword';
  }
}
