/**
 * Which canopy curve a crop or a cover has, and whether it is published, common practice or worked out here.
 *
 * Source  reference/science/canopy-defaults.csv by group (potato from published cultivar files, the others common practice); covers and leys:
 *         `base_temp_c` and `tt_full_cover_cd` of reference/covers.csv; crops without a group: FAO-56 stages stretched by thermal time (growth/stages.ts),
 *         where 10 % cover ends the initial stage and full cover the development stage.
 * Checks  test/canopy.test.ts (every crop and cover has a curve and says what it rests on; stage marks are met)
 * Holds   a curve for each of the 75 crops and 30 covers, each with its basis.
 * Leaves out  spacing: starting cover is that of the usual spacing; wide rows close later.
 */
import { stagesOfCrop } from '../growth/stages.ts';
import type { Cover } from '../reference/cover-columns.ts';
import type { Crop } from '../reference/crop-columns.ts';
import { reference } from '../reference/reference.ts';
import { cellsOf, tableText } from '../reference/table-text.ts';
import type { CanopyCurve } from './canopy-curve.ts';

export const canopyBases = ['published', 'common-practice', 'derived'] as const;

export interface CanopyChoice {
  readonly curve: CanopyCurve;
  readonly basis: (typeof canopyBases)[number];
  /** The row it was taken from, or what it was derived from: `potato`, `covers: grazing-rye`, `stages of beet`. */
  readonly from: string;
  /** Days a transplant stands still before it grows; 0 for what is sown in place. */
  readonly checkDays: number;
}

/** The middle of the 5-10 days a transplant stands still. Common practice. */
const transplantCheckDays = 7;

/** The curve of a crop or a cover by its id. Throws for an id that is neither. */
export function canopyFor(cropOrCoverId: string): CanopyChoice {
  const crop = reference.crops.get(cropOrCoverId);
  if (crop !== undefined) return ofCrop(crop);
  const cover = reference.covers.get(cropOrCoverId);
  if (cover !== undefined) return ofCover(cover);
  throw new Error(`There is neither a crop nor a cover "${cropOrCoverId}" in the tables.`);
}

/** Which row of canopy-defaults.csv a crop belongs to; the first pattern that fits its id. Crops that fit none are derived from their stages. */
const groupByCrop: readonly (readonly [RegExp, string])[] = [
  [/^potato/, 'potato'],
  [/^(calabrese|cauliflower|broccoli|kohlrabi)/, 'cauliflower, broccoli, kohlrabi (planted)'],
  [/^(cabbage|brussels|kale|chinese-cabbage)/, 'cabbage, kale, Brussels sprouts (planted)'],
  [/^(onion|spring-onion|shallot|garlic|leek)/, 'leek, onion'],
  [/^(carrot|parsnip|parsley)/, 'carrot, parsnip, parsley'],
  [/^(beetroot|chard|perpetual-spinach|spinach)/, 'beetroot, chard, spinach'],
  [/^(celeriac|celery|fennel)/, 'celeriac, celery'],
  [/^(lettuce|chicory|endive|salad|winter-salad|lambs-lettuce|winter-purslane|rocket|pak-choi)/, 'lettuce, leaves'],
  [/^(swede|turnip|radish)/, 'swede, turnip, radish'],
  [/^(pea|broad-bean)/, 'peas, broad bean'],
  [/^(french|runner)-bean/, 'French and runner bean'],
  [/^(squash|courgette|cucumber)/, 'squash, courgette, cucumber'],
  [/^sweet-corn/, 'sweet corn'],
  [/^(tomato|pepper|aubergine)/, 'tomato, pepper'],
];

/** Crops that ripen and die on the ground they grew on; all others are taken green. */
const ripening =
  /^(potato|onion-(set|drilled|module|overwintered)|shallot|garlic|squash|sweet-corn|broad-bean|pea|jerusalem-artichoke)/;

function ofCrop(crop: Crop): CanopyChoice {
  const checkDays = ['module', 'bare-root', 'crown'].includes(crop.establishment) ? transplantCheckDays : 0;
  const group = groupByCrop.find(([pattern]) => pattern.test(crop.id))?.[1];
  const row = group === undefined ? undefined : canopyGroups().get(group);
  if (row === undefined || group === undefined) return { ...fromStages(crop), checkDays };
  return { curve: { ...row.curve, ...declineOf(crop, row.curve) }, basis: row.basis, from: group, checkDays };
}

function ofCover(cover: Cover): CanopyChoice {
  const like = cover.type === 'grass' ? 'cereal cover, rye' : 'clover-grass ley';
  const start = canopyGroups().get(like)?.curve;
  if (start === undefined) throw new Error(`canopy-defaults.csv has no row "${like}".`);
  // Broad-leaved covers close the ground as a ley does, and stand as high as a cereal: the greatest cover of the one, the other's start. Common practice.
  const fullCoverShare = cover.type === 'brassica' || cover.type === 'broadleaf' ? 0.9 : start.fullCoverShare;
  const curve = { ...start, fullCoverShare, baseC: cover.baseTempC, tFullCd: cover.ttFullCoverCd };
  return { curve, basis: 'common-practice', from: `covers: ${cover.id}`, checkDays: 0 };
}

/** Perennials with no thermal time of their own reach cover like a planted beet. Common practice. */
const perennialFull = { baseC: 4, initialCd: 150, developmentCd: 500 } as const;

function fromStages(crop: Crop): Omit<CanopyChoice, 'checkDays'> {
  const stages = stagesOfCrop(crop.id);
  const { baseC, initialCd, developmentCd } = stages ?? perennialFull;
  const fullCoverShare = 0.9;
  const curve: CanopyCurve = {
    startCoverShare: startCoverShareFor(initialCd, developmentCd, fullCoverShare),
    fullCoverShare,
    tFullCd: developmentCd,
    baseC,
    declineFromCd: null,
    declineOverCd: null,
  };
  return {
    curve: { ...curve, ...declineOf(crop, curve) },
    basis: 'derived',
    from: stages === null ? 'perennials: common practice' : `stages of ${crop.fao56Key}`,
  };
}

/**
 * The starting cover at which the cover is 10 % at the end of the initial stage and 98 % of its greatest at the end of development.
 * From CC0 exp(g Ti) = 0.10 and g = ln(12.5 CCx / CC0) / Tf, with s = Ti / Tf: ln CC0 = (ln 0.10 - s ln(12.5 CCx)) / (1 - s).
 */
export function startCoverShareFor(initialCd: number, developmentCd: number, fullCoverShare: number): number {
  const share = initialCd / developmentCd;
  const floor = 0.0005; // Raes et al.: seedlings of the smallest seed at the widest spacing
  return Math.max(floor, Math.exp((Math.log(0.1) - share * Math.log(12.5 * fullCoverShare)) / (1 - share)));
}

/** Leaves begin to die at the end of mid-season and are gone a late stage after ripeness. Common practice: no published rate but potato's. */
function declineOf(crop: Crop, curve: CanopyCurve): Pick<CanopyCurve, 'declineFromCd' | 'declineOverCd'> {
  const stages = ripening.test(crop.id) ? stagesOfCrop(crop.id) : null;
  if (stages === null) return { declineFromCd: null, declineOverCd: null };
  // The stages' sums may stand above another base than the curve's: keep their shape, not their length.
  const scale = Math.max(1, (curve.tFullCd * 1.1) / stages.midCd);
  const lateCd = Math.max(stages.lateCd - stages.midCd, 0.1 * stages.lateCd);
  return { declineFromCd: stages.midCd * scale, declineOverCd: 2 * lateCd * scale };
}

let kept: ReadonlyMap<string, { curve: CanopyCurve; basis: CanopyChoice['basis'] }> | null = null;

function canopyGroups(): NonNullable<typeof kept> {
  kept ??= new Map(
    cellsOf(tableText('science/canopy-defaults')).map((cell) => {
      const curve = {
        startCoverShare: Number(cell('CC0')),
        fullCoverShare: Number(cell('CCx')),
        tFullCd: Number(cell('t_full_Cd')),
        baseC: Number(cell('base_C')),
        declineFromCd: null,
        declineOverCd: null,
      };
      return [
        cell('group'),
        { curve, basis: cell('how_known').startsWith('verified') ? 'published' : 'common-practice' },
      ] as const;
    }),
  );
  return kept;
}
