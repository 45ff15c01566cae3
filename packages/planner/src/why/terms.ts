/** Inputs of a derivation, by where they come from. */
import { referenceCell } from '@leywright/agronomy';
import type { Known } from '../plan/inputs.ts';
import type { Why, WhyInput } from '../plan/why.ts';

type Amount = Pick<WhyInput, 'name' | 'value' | 'unit'>;

export function ofFarm(amount: Amount, where: string): WhyInput {
  return { ...amount, from: 'farm', where, source: null, howKnown: 'own', why: null };
}

export function ofConvention(amount: Amount, name: string): WhyInput {
  return {
    ...amount,
    from: 'convention',
    where: `farm.json, ${name}`,
    source: null,
    howKnown: 'common practice',
    why: null,
  };
}

export function ofRecord(amount: Amount, where: string): WhyInput {
  return { ...amount, from: 'record', where, source: null, howKnown: 'own', why: null };
}

export function ofSums(amount: Amount, why: string | null = null): WhyInput {
  return { ...amount, from: 'derived', where: null, source: null, howKnown: null, why };
}

/** How a whole band or rule of agronomy is known. */
export function ofPractice(amount: Amount, where: string): WhyInput {
  return { ...amount, from: 'reference', where, source: null, howKnown: 'common practice', why: null };
}

/** A cell of a reference table with its own source and how it is known. */
export function ofTable(
  amount: Amount,
  table: string,
  at: { readonly row: string; readonly column: string },
): WhyInput {
  const cell = referenceCell(table, at.row, at.column);
  const source = cell.sources.map((one) => one.citation).join('; ');
  const howKnown = cell.howKnown === 'derived' ? null : cell.howKnown;
  return {
    ...amount,
    from: cell.howKnown === 'derived' ? 'derived' : 'reference',
    where: `${table}.csv, ${at.row}, ${at.column}`,
    source: source === '' ? null : source,
    howKnown,
    why: null,
  };
}

export function ofKnown(name: string, known: Known | null, unit: string): WhyInput {
  if (known === null)
    return { name, value: null, unit, from: 'farm', where: null, source: null, howKnown: null, why: null };
  const from = known.origin === 'own' ? 'farm' : known.origin;
  const howKnown = known.howKnown === 'derived' ? null : known.howKnown;
  return { name, value: known.value, unit, from, where: known.where, source: known.source, howKnown, why: null };
}

/** A number as a sum on paper has it: no more digits than it is worth. */
export function written(value: number): string {
  const text = Math.abs(value) >= 1000 ? value.toFixed(1) : String(Number(value.toPrecision(4)));
  return text.replace(/\.0$/, '').replace('-', '−');
}

export function why(
  id: string,
  title: string,
  rest: Omit<Why, 'id' | 'title' | 'figures' | 'low' | 'high' | 'doubt' | 'levers'> &
    Partial<Pick<Why, 'figures' | 'low' | 'high' | 'doubt' | 'levers'>>,
): Why {
  return { figures: {}, low: null, high: null, doubt: [], levers: [], ...rest, id, title };
}
