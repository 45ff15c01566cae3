/** Figures that people give in several units: exactly one heading of a family stands in a file, and SI is what is kept. */
import { area, length, mass, money } from '@leywright/measures';
import type { Cell, Kind, Units } from './column.ts';
import { type Bounds, number, readCellNumber } from './plain-kinds.ts';

const fromNought: Bounds = { least: 0 };

export function areas(bounds: Bounds = fromNought): Units {
  return [
    { ending: 'm2', ...number('m²', bounds) },
    { ending: 'ha', ...number('ha', bounds, area.toM2(1, 'ha')) },
    { ending: 'acres', ...number('acres', bounds, area.toM2(1, 'acre')) },
    { ending: 'rods', ...number('square rods', bounds, area.toM2(1, 'square-rod')) },
  ];
}

export function lengths(bounds: Bounds = fromNought): Units {
  return [
    { ending: 'm', ...number('m', bounds) },
    { ending: 'cm', ...number('cm', bounds, 0.01) },
    { ending: 'ft', ...number('feet', bounds, length.toM(1, 'foot')) },
    { ending: 'yd', ...number('yards', bounds, length.toM(1, 'yard')) },
    { ending: 'in', ...number('inches', bounds, length.toM(1, 'inch')) },
  ];
}

export function masses(bounds: Bounds = fromNought): Units {
  return [
    { ending: 'kg', ...number('kg', bounds) },
    { ending: 'g', ...number('g', bounds, 0.001) },
    { ending: 't', ...number('t', bounds, 1000) },
    { ending: 'lb', ...number('lb', bounds, mass.toKg(1, 'lb')) },
  ];
}

const lbAcreInTHa = mass.toKg(1, 'lb') / 1000 / (area.toM2(1, 'acre') / 10_000);

/** Kept in t/ha. */
export function yields(): Units {
  return [
    { ending: 't_ha', ...number('t/ha', fromNought) },
    { ending: 'kg_m2', ...number('kg/m²', fromNought, 10) },
    { ending: 'lb_acre', ...number('lb/acre', fromNought, lbAcreInTHa) },
  ];
}

/** A share of one, or the same in per cent. */
export function shares(bounds: Bounds = { least: 0, most: 1 }): Units {
  return [
    { ending: 'share', ...percentTolerant(number('share of 1', bounds)) },
    { ending: 'pct', ...withoutSign(number('%', bounds, 0.01)) },
  ];
}

/** `85 %` in a share column can only mean 0.85; `85` there is a mistake and is told as one. */
function percentTolerant(kind: Kind<number>): Kind<number> {
  return {
    ...kind,
    read: (found, cell) => {
      const percent = /^(.*\d)\s*%$/.exec(found)?.[1];
      if (percent === undefined) return kind.read(found, suggestingHundredth(found, cell));
      const value = readCellNumber(percent, cell);
      return value === undefined ? undefined : kind.read(String(value / 100), { ...cell, decimals: 'point' });
    },
  };
}

function withoutSign(kind: Kind<number>): Kind<number> {
  return { ...kind, read: (found, cell) => kind.read(found.replace(/\s*%$/, ''), cell) };
}

function suggestingHundredth(found: string, cell: Cell): Cell {
  const hundredth = Number(found) / 100;
  const likely = Number(found) > 1 && hundredth <= 1;
  return {
    ...cell,
    fault: (code, fault) =>
      cell.fault(code, code === 'out-of-range' && likely ? { ...fault, nearest: [String(hundredth)] } : fault),
  };
}

/** A price in the farm's money, kept in its least coin. */
export const price: Units = [
  {
    ending: '',
    holds: 'sum in the farm’s money, such as 1.80',
    numeric: true,
    read: (found, cell) => {
      const value = readCellNumber(found, cell);
      if (value === undefined) return undefined;
      const minor = Math.round(value * coinsInOne(cell.money));
      if (value < 0) return cell.fault('out-of-range', { figures: { least: 0 } });
      return Math.abs(minor - value * coinsInOne(cell.money)) < 1e-6
        ? minor
        : cell.fault('not-whole', { nearest: [(minor / coinsInOne(cell.money)).toString()] });
    },
    write: (minor, currency) => (minor / coinsInOne(currency)).toFixed(Math.round(Math.log10(coinsInOne(currency)))),
  },
];

const coins = new Map<string, number>();

/** 100 for pence and cents, 1 for money without small coins. */
export function coinsInOne(currency: string): number {
  const known = coins.get(currency) ?? money.readMoney('1', currency)?.minor ?? 100;
  coins.set(currency, known);
  return known;
}
