/** Land out of its rows, and back into them. */
import type { PlotId } from '@leywright/measures';
import { type Feature, type OrganismMark, type Part, type Plot, wholePlot } from '../farm/land.ts';
import { keyOf } from '../farm/subjects.ts';
import type { GroundMap } from '../ground/ground-map.ts';
import type { Placed } from '../table/read-table.ts';
import { asWish, settledSpan } from '../table/span-columns.ts';
import type { Open, PartRow, PlotRow, Wished } from './land-tables.ts';

/** A name left out is the id. */
export function withNames<T extends { readonly id: string; readonly name: string }>(
  rows: readonly Placed<Open<T, 'name'>>[],
): T[] {
  return rows.map(({ value }) => ({ ...value, name: value.name ?? value.id }) as unknown as T);
}

/** Two per cent is what a tape and a map may differ by before somebody should look. */
const areasMayDiffer = 0.02;

/** Plots; one without a typed area gets its outline's, and is told when it has neither. */
export function plotsOf(rows: readonly Placed<PlotRow>[], map: GroundMap): Plot[] {
  return rows.flatMap((row) => {
    const { id, letter, name, from, to, grossM2: typedM2 } = row.value;
    const mapped = map.outlines.get(id) ?? null;
    if (from !== null && to !== null && to <= from)
      row.fault('ends-before-start', 'to', { found: to, figures: { from } });
    const area = areaOf(row, mapped?.areaM2 ?? null);
    if (area === null) return [];
    const measuredBy = row.value.measuredBy ?? (typedM2 === null ? 'geometry' : 'typed');
    const said = { letter: letter ?? letterOf(id), name: name ?? id };
    return [{ ...row.value, ...said, grossM2: area, measuredBy, ring: mapped?.ring ?? null }];
  });
}

/** The typed area, else the outline's; null, told, when there is neither. */
function areaOf(row: Placed<PlotRow>, mappedM2: number | null): number | null {
  const typedM2 = row.value.grossM2;
  if (typedM2 === null && mappedM2 === null) {
    const nearest = ['gross_m2', 'gross_ha', 'gross_acres', 'gross_rods', 'ground.geojson'];
    row.fault('missing-value', 'gross_m2', { nearest });
  } else if (typedM2 !== null && mappedM2 !== null && Math.abs(typedM2 - mappedM2) > areasMayDiffer * mappedM2) {
    const figures = { typedM2, mappedM2: Math.round(mappedM2) };
    row.fault('area-differs', 'gross_m2', { gravity: 'look', found: String(typedM2), figures });
  }
  return typedM2 ?? mappedM2;
}

function letterOf(id: string): string {
  return id.length <= 3 ? id.toUpperCase() : id.slice(0, 1).toUpperCase();
}

export type BedCounts = ReadonlyMap<PlotId, number | null>;

export function bedCountsOf(plots: readonly Plot[]): BedCounts {
  return new Map(plots.map((plot) => [plot.id, plot.bedCount]));
}

/** Parts: rows with one id are one part, each with another parent. */
export function partsOf(rows: readonly Placed<PartRow>[], beds: BedCounts): Part[] {
  const parts = new Map<string, { readonly part: Part; readonly row: Placed<PartRow> }>();
  for (const row of rows) {
    const { id, plot, from, to, why, parentPlot, parentSpan, parentShare } = row.value;
    const span = settledSpan(row.value.span, beds.get(plot) ?? null) ?? wholePlot;
    const parents = parentPlot === null ? [] : [{ plot: parentPlot, span: parentSpan, share: parentShare }];
    const before = parts.get(id)?.part;
    const part: Part = { id, plot, span, from, to, parents, why };
    if (before === undefined) {
      if (to !== null && to <= from) row.fault('ends-before-start', 'to', { found: to, figures: { from } });
      parts.set(id, { part, row });
    } else if (JSON.stringify({ ...before, parents: [] }) !== JSON.stringify({ ...part, parents: [] })) {
      row.fault('id-twice', 'id', { found: id, figures: { firstLine: parts.get(id)?.row.line ?? 0 } });
    } else parts.set(id, { part: { ...before, parents: [...before.parents, ...parents] }, row });
  }
  return [...parts.values()].map(({ part, row }) => {
    const total = part.parents.reduce((sum, parent) => sum + parent.share, 0);
    if (part.parents.length > 0 && Math.abs(total - 1) > 0.01)
      row.fault('parts-do-not-add-up', 'parent_share', { gravity: 'look', found: String(total), nearest: ['1'] });
    return part;
  });
}

export function rowsOfPart({ parents, span, ...part }: Part): PartRow[] {
  const none = { parentPlot: null, parentSpan: wholePlot, parentShare: 1 };
  const ofParents = parents.map((parent) => ({
    parentPlot: parent.plot,
    parentSpan: parent.span,
    parentShare: parent.share,
  }));
  return (parents.length === 0 ? [none] : ofParents).map((parent) => ({ ...part, span: asWish(span), ...parent }));
}

/** Features with their lines; lines without a row become features of their own. */
export function featuresOf(rows: readonly Placed<Open<Omit<Feature, 'line'>, 'name'>>[], map: GroundMap): Feature[] {
  const listed = rows.map(({ value }) => ({
    ...value,
    name: value.name ?? value.id,
    line: map.lines.get(value.id)?.line ?? null,
  }));
  const ids = new Set(listed.map((one) => one.id));
  const drawn = [...map.lines]
    .filter(([id]) => !ids.has(id))
    .map(
      ([id, line]) =>
        ({
          id,
          kind: line.kind ?? 'hedge',
          name: line.name ?? id,
          lengthM: null,
          areaM2: null,
          line: line.line,
        }) as const,
    );
  return [...listed, ...drawn];
}

export function marksOf(rows: readonly Placed<Wished<OrganismMark>>[], beds: BedCounts): OrganismMark[] {
  const firstLines = new Map<string, number>();
  return rows.map((row) => {
    const { plot, foundOn, clearedOn, organism } = row.value;
    const mark = { ...row.value, span: settledSpan(row.value.span, beds.get(plot) ?? null) ?? wholePlot };
    const firstLine = firstLines.get(keyOf('marks', mark));
    if (firstLine !== undefined) row.fault('row-twice', 'organism', { found: organism, figures: { firstLine } });
    else firstLines.set(keyOf('marks', mark), row.line);
    if (clearedOn !== null && clearedOn < foundOn)
      row.fault('ends-before-start', 'cleared_on', { found: clearedOn, figures: { from: foundOn } });
    return mark;
  });
}

export function asWished<T extends { readonly span: OrganismMark['span'] }>(row: T): Wished<T> {
  return { ...row, span: asWish(row.span) };
}
