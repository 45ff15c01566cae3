/** Crops that are promised and not grown, or grown on too little ground, or with no yield to reckon by. */
import { yearOf } from '@leywright/measures';
import type { Finding, Gravity } from '../plan/finding.ts';
import type { CropNeed } from '../plan/supply.ts';
import { householdsOf } from '../promise/demand.ts';
import { yieldSaid } from '../promise/known.ts';
import { boxWeek } from '../supply/box-year.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { isTooSmall, type Lack } from './causes.ts';
import { freeGround } from './free-ground.ts';
import { mend, supplyFinding } from './say.ts';

export function groundSupplyFindings(run: SupplyRun, lacks: readonly Lack[]): readonly Finding[] {
  return [
    ...lacksByCrop(lacks, 'crop-not-on-ground').map((group) => notOnGround(run, group)),
    ...lacksByCrop(lacks, 'ground-too-small').flatMap((group) =>
      tooSmall(run, needOf(run, group), gravityOf(run, group)),
    ),
    ...yearNeedFindings(run),
    ...noYieldFindings(run),
  ];
}

/** Lacks of one cause, by crop and season. */
export function lacksByCrop(lacks: readonly Lack[], cause: Lack['cause']): readonly (readonly Lack[])[] {
  const groups = new Map<string, Lack[]>();
  for (const lack of lacks) {
    if (lack.cause !== cause) continue;
    const key = `${lack.crop.id}/${lack.harvestYear}`;
    groups.set(key, [...(groups.get(key) ?? []), lack]);
  }
  return [...groups.values()];
}

/** To put right when a box is short by it; only worth a look when other things make up the number; a note when the weeks are over. */
export function gravityOf(run: SupplyRun, lacks: readonly Lack[]): Gravity {
  const toCome = lacks.filter((lack) => run.axis.textOf(run.axis.dayOf(lack.week) + 6) >= run.input.today);
  if (toCome.length === 0) return 'note';
  return toCome.some((lack) => boxWeek(run, lack.week).shortItems > 0) ? 'put-right' : 'look';
}

function needOf(run: SupplyRun, group: readonly Lack[]): CropNeed | undefined {
  return run.needs.find((need) => need.crop === group[0]?.crop.id && need.harvestYear === group[0]?.harvestYear);
}

function notOnGround(run: SupplyRun, group: readonly Lack[]): Finding {
  const [first] = group;
  const crop = first?.crop.id ?? '';
  const need = needOf(run, group);
  return supplyFinding('crop-not-on-ground', {
    gravity: gravityOf(run, group),
    place: { crop, year: first?.harvestYear ?? run.input.year },
    figures: {
      crop,
      fromWeek: run.axis.nameOf(first?.week ?? 0),
      weeks: new Set(group.map((lack) => lack.week)).size,
      needM2: need?.needM2 ?? null,
      year: first?.harvestYear ?? run.input.year,
    },
    mend: [
      need?.needM2 == null ? mend('plan-stand', { crop }) : mend('plan-stand', { crop, areaM2: need.needM2 }),
      mend('name-another-crop', { crop }),
    ],
    why: need?.why.area ?? null,
  });
}

function tooSmall(run: SupplyRun, need: CropNeed | undefined, gravity: Gravity): readonly Finding[] {
  if (need === undefined || need.needM2 === null) return [];
  const shortM2 = need.needM2 - need.plannedM2;
  const free = freeGround(run, need);
  const households = Math.floor((householdsOf(run.promise) * need.plannedM2) / need.needM2);
  const [plot] = need.plots;
  return [
    supplyFinding('ground-too-small', {
      gravity,
      place: { crop: need.crop, year: need.harvestYear, ...(plot === undefined ? {} : { plot }) },
      figures: { crop: need.crop, needM2: need.needM2, haveM2: need.plannedM2, shortM2, year: need.harvestYear },
      mend: [
        free === null
          ? mend('more-ground', { crop: need.crop, shortM2 })
          : mend('more-ground-on-plot', {
              crop: need.crop,
              areaM2: Math.min(shortM2, free.freeM2),
              shortM2,
              plot: free.plot,
            }),
        mend('fewer-households', { households }),
      ],
      why: need.why.area,
    }),
  ];
}

/** Farms that count by the household's year: no weeks to go short in, only ground. */
function yearNeedFindings(run: SupplyRun): readonly Finding[] {
  const inSlots = new Set(run.promise.slots.flatMap((slot) => slot.crops as readonly string[]));
  return run.needs
    .filter((need) => !inSlots.has(need.crop) && isTooSmall(need))
    .flatMap((need) => {
      const gravity: Gravity = yearOf(run.input.today) > run.input.year ? 'note' : 'put-right';
      if (need.plannedM2 > 0) return tooSmall(run, need, gravity);
      return [
        supplyFinding('crop-not-on-ground', {
          gravity,
          place: { crop: need.crop, year: run.input.year },
          figures: { crop: need.crop, needM2: need.needM2, year: run.input.year },
          mend: [
            mend('plan-stand', { crop: need.crop, areaM2: need.needM2 }),
            mend('name-another-crop', { crop: need.crop }),
          ],
          why: need.why.area,
        }),
      ];
    });
}

/** Promised crops, and crops on the ground, that nobody can reckon with. */
function noYieldFindings(run: SupplyRun): readonly Finding[] {
  const promised = [
    ...run.promise.slots.flatMap((slot) => slot.crops as readonly string[]),
    ...run.promise.needs.filter((need) => need.kgHousehold !== null).map((need) => need.crop as string),
  ];
  const grown = run.lots
    .filter((lot) => lot.harvestYear === run.input.year && lot.basis === 'unknown')
    .map((lot) => lot.crop.id);
  return [...new Set([...promised, ...grown])].flatMap((id) => {
    const crop = run.input.crops.cropOf(id);
    if (crop === null || yieldSaid(crop) !== null) return [];
    return [
      supplyFinding('no-yield-known', {
        gravity: 'put-right',
        place: { crop: id, year: run.input.year },
        figures: { crop: id },
        mend: [mend('give-yield', { crop: id }), mend('base-on-crop', { crop: id })],
      }),
    ];
  });
}
