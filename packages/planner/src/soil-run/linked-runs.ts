/**
 * Parts tied by herbage: what is cut and taken on one is laid down on another, in both accounts.
 *
 * Rule    A part is run after those that give to it. Giving in a circle cannot be run part by part and is told, with the parts of the circle.
 *         Herbage is counted by area: what leaves a hectare is spread over as many as receive it.
 * Holds   what the givers' accounts moved off is what the receivers' were brought, kilo for kilo.
 */
import type { SoilBrought, SoilPart, SoilRun, SoilTransfer, SoilWeather } from '@leywright/agronomy';
import type { PartRuns } from './part-runs.ts';

export interface LinkedPart {
  readonly part: SoilPart;
  readonly areaM2: number;
}

/** The herbage of a stand's cut: how much of it goes where. */
export interface HerbageGift {
  readonly fromPart: string;
  readonly stand: string;
  readonly cutDayNumber: number;
  readonly toPart: string;
  /** Share of that cut; what is given to nobody leaves the farm. */
  readonly herbageShare: number;
}

export type LinkedRuns =
  | { readonly kind: 'runs'; readonly runs: ReadonlyMap<string, SoilRun> }
  | { readonly kind: 'circle'; readonly parts: readonly string[] };

export function runLinked(
  parts: readonly LinkedPart[],
  gifts: readonly HerbageGift[],
  at: { readonly weather: SoilWeather; readonly runs: PartRuns },
): LinkedRuns {
  const done = new Map<string, SoilRun>();
  const areaM2Of = new Map(parts.map((one) => [one.part.id, one.areaM2]));
  // What comes from ground that is not among the parts gives nothing and holds up nobody.
  const known = gifts.filter((gift) => areaM2Of.has(gift.fromPart));
  let waiting = [...parts];
  while (waiting.length > 0) {
    const ready = waiting.filter(({ part }) => giversOf(part.id, known).every((id) => done.has(id)));
    if (ready.length === 0) return { kind: 'circle', parts: waiting.map(({ part }) => part.id).sort() };
    for (const { part, areaM2 } of ready) {
      const received = known
        .filter((gift) => gift.toPart === part.id)
        .flatMap((gift) => broughtBy(gift, done.get(gift.fromPart), (areaM2Of.get(gift.fromPart) ?? 0) / areaM2));
      const whole = received.length === 0 ? part : { ...part, brought: [...part.brought, ...received] };
      done.set(part.id, at.runs.runOf(whole, at.weather));
    }
    waiting = waiting.filter(({ part }) => !done.has(part.id));
  }
  return { kind: 'runs', runs: done };
}

function giversOf(part: string, gifts: readonly HerbageGift[]): readonly string[] {
  return gifts.filter((gift) => gift.toPart === part).map((gift) => gift.fromPart);
}

function broughtBy(gift: HerbageGift, giver: SoilRun | undefined, areaRatio: number): readonly SoilBrought[] {
  const isOfGift = (one: SoilTransfer) => one.standId === gift.stand && one.dayNumber === gift.cutDayNumber;
  return (giver?.transfers ?? []).filter(isOfGift).map((one) => ({
    dayNumber: one.dayNumber,
    nKgHa: one.nKgHa * gift.herbageShare * areaRatio,
    carbonKgHa: one.carbonKgHa * gift.herbageShare * areaRatio,
    way: 'carried',
  }));
}
