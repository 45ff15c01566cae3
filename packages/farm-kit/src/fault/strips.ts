/** Narrow strips at a plot's edge on which something can be set without changing the plot's account, and what follows there. */
import type { Farm, Stand } from '@leywright/book';
import { span } from '../build/farm.ts';
import { cover, type StandPieces } from '../build/stand.ts';
import type { Chance } from '../make/chance.ts';
import { inYear, type Planted, planted, withStands, yearsOnCourse } from './planted.ts';

export const strip = span(0, 0.02);
export const rest = span(0.02, 1);

export interface StripYear {
  readonly plot: string;
  readonly year: number;
  /** Pieces of every stand on the strip. */
  readonly on: StandPieces;
}

/** Something on the strip in the year in which clover is sown on the rest; unless it says what follows, radish till spring; then chicory. */
export function besideClover(farm: Farm, chance: Chance, made: (at: StripYear) => readonly Stand[]): Planted {
  const { plot, year } = chance.oneOf(yearsOnCourse(farm, 'clover-1', 2027, 2029));
  const on = { span: strip, courseYear: year };
  const own = made({ plot, year, on });
  const clover = cover(plot, 'sweet-clover', [inYear(year, '04-12'), inYear(year + 6, '02-27')], {
    id: `${plot}-${year}-clover`,
    kind: 'ley',
    span: rest,
    courseYear: year,
  });
  const spring = inYear(year + 1, '03-20');
  const radish = cover(plot, 'fodder-radish', [inYear(year, '08-28'), spring], {
    id: `${plot}-${year}-strip-radish`,
    ...on,
  });
  const isCovered = own.some((one) => one.to >= spring);
  const chicory = cover(plot, 'forage-chicory', [inYear(year + 1, '05-12'), inYear(year + 6, '02-27')], {
    id: `${plot}-${year}-strip-chicory`,
    ...on,
  });
  return planted(withStands(farm, [clover, ...own, ...(isCovered ? [] : [radish]), chicory]), {
    plot,
    stand: own[0]?.id ?? '',
  });
}

/** A crop on the strip in the summer after carrots, before the chicory there. */
export function afterCarrots(farm: Farm, chance: Chance, made: (at: StripYear) => readonly Stand[]): Planted {
  const { plot, year } = chance.oneOf(yearsOnCourse(farm, 'chicory-1', 2027, 2030));
  const on = { span: strip, courseYear: year };
  const own = made({ plot, year, on });
  const wide = cover(plot, 'forage-chicory', [inYear(year, '05-20'), inYear(year + 2, '02-28')], {
    id: `${plot}-${year}-chicory`,
    span: rest,
    courseYear: year,
  });
  const narrow = cover(plot, 'forage-chicory', [inYear(year, '08-06'), inYear(year + 2, '02-28')], {
    id: `${plot}-${year}-strip-chicory`,
    ...on,
  });
  return planted(withStands(farm, [wide, ...own, narrow]), { plot, stand: own[0]?.id ?? '', year });
}
