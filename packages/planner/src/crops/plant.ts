/** What grows on a stand, crop or cover alike, as ground, cover and rests ask for it. */
import { type Cover, type Crop, reference } from '@leywright/agronomy';
import type { StandKind } from '@leywright/book';
import type { Look } from '../plan/ground.ts';
import type { CropBook } from '../plan/inputs.ts';

export interface Plant {
  readonly id: string;
  readonly name: string;
  /** Botanical family; null for a mixture and for what no table knows. */
  readonly family: string | null;
  /** Families of everything in it: one for a crop, several for a mixture. */
  readonly families: readonly string[];
  readonly crop: Crop | null;
  readonly cover: Cover | null;
  /** Ids it counts under: itself, what it is based on, the parts of a mixture. */
  readonly ids: readonly string[];
}

const noBook: CropBook = { cropOf: () => null, idsOf: (id) => [id] };

/** What an id of a stand stands for. An id that nobody knows is still a plant: with its id for a name. */
export function plantOf(id: string, crops: CropBook = noBook): Plant {
  const cover = reference.covers.get(id);
  if (cover !== undefined) return coverPlant(cover);
  const crop = crops.cropOf(id);
  const family = crop?.family ?? null;
  return {
    id,
    name: crop?.name ?? id,
    family,
    families: family === null ? [] : [family],
    crop: crop?.reference ?? null,
    cover: null,
    ids: crops.idsOf(id),
  };
}

function coverPlant(cover: Cover): Plant {
  const parts = cover.mixOf.map((part) => reference.covers.get(part.coverId)).filter((part) => part !== undefined);
  const families = parts.length > 0 ? [...new Set(parts.map((part) => part.family))] : [cover.family];
  return {
    id: cover.id,
    name: cover.name,
    family: families.length === 1 ? (families[0] ?? null) : null,
    families,
    crop: null,
    cover,
    ids: [cover.id, ...parts.map((part) => part.id)],
  };
}

const lookByGroup: Readonly<Record<Crop['rotationGroup'], Look>> = {
  potato: 'potato',
  brassica: 'brassica',
  allium: 'allium',
  umbellifer: 'root',
  chenopod: 'beet',
  cucurbit: 'squash',
  sweetcorn: 'squash',
  'tunnel-solanum': 'squash',
  legume: 'pulse',
  leaf: 'salad',
  perennial: 'salad',
};

const lookByFamily: Readonly<Record<string, Look>> = {
  Solanaceae: 'potato',
  Brassicaceae: 'brassica',
  Amaryllidaceae: 'allium',
  Apiaceae: 'root',
  Amaranthaceae: 'beet',
  Cucurbitaceae: 'squash',
  Fabaceae: 'pulse',
};

/** How pictures draw a crop: by its rotation group, else its family. */
export function cropLook(plant: Plant): Look {
  if (plant.crop !== null) return lookByGroup[plant.crop.rotationGroup];
  return (plant.family === null ? undefined : lookByFamily[plant.family]) ?? 'salad';
}

/** How pictures draw a stand. */
export function standLook(plant: Plant, kind: StandKind, isUndersown: boolean): Look {
  if (kind === 'ley') return 'ley';
  if (kind === 'cover') return isUndersown ? 'undersown' : 'cover';
  return cropLook(plant);
}
