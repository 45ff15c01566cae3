/**
 * The inspection pack: fourteen parts for a year, as known on a day, every line with the id of its record. Data only; the server prints it.
 *
 * Holds   nothing of households is in it; what no record says reads "not recorded" or "unknown", never nought.
 */
import { asKnownOn } from '@leywright/book';
import { asDay } from '@leywright/measures';
import { proof } from '@leywright/planner';
import { boxPart, inputPart, ledgerPart, lotPart, seedPart } from './goods-parts.ts';
import { farmPart, groundPart, rotationPart, sowingPart } from './ground-parts.ts';
import { notRecorded, type Pack, type PackAsk, type PackView } from './part.ts';
import { balancePart, correctionPart, findingPart, signedPart, tracePart } from './proof-parts.ts';

export function packOf(ask: PackAsk): Pack {
  const { farm, year, knownOn } = ask;
  const known = asKnownOn(ask.entries, knownOn, farm.about.place.timeZone);
  const chain = proof.followFarm(farm, known);
  const view: PackView = {
    ...ask,
    known,
    chain,
    from: asDay(`${year}-01-01`),
    to: asDay(`${year}-12-31`),
    cropName: proof.cropNameOf(farm),
    plotName: (id) => farm.plots.find((plot) => plot.id === id)?.name ?? id ?? notRecorded,
  };
  const parts = [
    farmPart,
    groundPart,
    rotationPart,
    inputPart,
    seedPart,
    sowingPart,
    lotPart,
    ledgerPart,
    boxPart,
    balancePart,
    tracePart,
    correctionPart,
    findingPart,
    signedPart,
  ];
  return {
    farm: farm.about.name,
    sample: farm.about.sample,
    year,
    knownOn,
    parts: parts.map((part, at) => ({ number: at + 1, ...part(view) })),
  };
}
