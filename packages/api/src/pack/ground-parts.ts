/** Parts of the pack about the ground: the farm, ten years of stands, the rotation, the year's sowings. */
import { yearOf } from '@leywright/measures';
import { notRecorded, type PackView, type PartOf } from './part.ts';

/** The record that last wrote a row of a table; a row of the farm folder has none. */
function recordOf({ known }: PackView, subject: string, key: string): string {
  const entry = known.findLast(({ body }) => body?.kind === 'set' && body.subject === subject && body.key === key);
  return entry?.id ?? 'farm folder';
}

export const farmPart: PartOf = (view) => {
  const { about, plots } = view.farm;
  const { place } = about;
  const hectares = plots.reduce((sum, plot) => sum + plot.grossM2, 0) / 10_000;
  const near = place.near === null ? '' : ` near ${place.near}`;
  return {
    title: 'Farm, certificate and land',
    sentence: `${about.name}${near}, ${place.jurisdiction}: ${plots.length} plots, ${hectares.toFixed(2)} ha. Certificate and certifier: ${notRecorded} in this book; show the paper.`,
    columns: [
      { head: 'Plot', widthShare: 0.24 },
      { head: 'Hectares', widthShare: 0.1, isNumber: true },
      { head: 'Measured', widthShare: 0.1 },
      { head: 'Status', widthShare: 0.13 },
      { head: 'Since', widthShare: 0.12 },
      { head: 'Record', widthShare: 0.31 },
    ],
    rows: plots.map((plot) => [
      `${plot.letter} ${plot.name}`,
      (plot.grossM2 / 10_000).toFixed(2),
      plot.measuredBy === 'typed' ? 'typed in' : 'from the map',
      plot.status,
      plot.statusSince ?? notRecorded,
      recordOf(view, 'plots', plot.id),
    ]),
  };
};

export const groundPart: PartOf = (view) => {
  const { farm, year, chain } = view;
  const stands = farm.stands.filter((stand) => yearOf(stand.from) <= year && yearOf(stand.to) > year - 10);
  const started = new Map(chain.sowings.map((sowing) => [sowing.stand, sowing.entry]));
  const sorted = stands.toSorted((one, other) =>
    one.plot === other.plot ? (one.from < other.from ? -1 : 1) : one.plot < other.plot ? -1 : 1,
  );
  return {
    title: 'Ground, ten years',
    sentence: `${stands.length} stands on ${farm.plots.length} plots, ${year - 9} to ${year}. Days are the first on the ground and the first day free again.`,
    columns: [
      { head: 'Plot', widthShare: 0.16 },
      { head: 'What stood there', widthShare: 0.25 },
      { head: 'From', widthShare: 0.1 },
      { head: 'Free on', widthShare: 0.1 },
      { head: 'State', widthShare: 0.08 },
      { head: 'Record', widthShare: 0.31 },
    ],
    rows: sorted.map((stand) => [
      view.plotName(stand.plot),
      `${view.cropName(stand.what)}${stand.variety === null ? '' : `, ${stand.variety}`}${stand.kind === 'crop' ? '' : ` (${stand.kind})`}`,
      stand.from,
      stand.to,
      stand.state,
      started.get(stand.id) ?? recordOf(view, 'stands', stand.id),
    ]),
  };
};

export const rotationPart: PartOf = (view) => {
  const { rotation } = view.farm;
  const courses = rotation?.courses ?? [];
  const courseIn = (start: string | null, year: number) => {
    const at = courses.findIndex((course) => course.id === start);
    if (at < 0 || rotation === null) return notRecorded;
    const index = (((at + year - rotation.firstYear) % courses.length) + courses.length) % courses.length;
    return courses[index]?.name ?? notRecorded;
  };
  const rested = view.plan.findings.filter((finding) => finding.code.startsWith('rest'));
  const agreed = rotation?.agreedOn ?? null;
  return {
    title: 'Rotation and rests by plot',
    sentence: `${courses.length} courses${agreed === null ? ', not agreed' : `, agreed on ${agreed}`}. ${rested.length === 0 ? 'No rest is broken in the years looked at.' : `${rested.length} rests are to put right; part 13 names them.`}`,
    columns: [
      { head: 'Plot', widthShare: 0.2 },
      { head: `Course ${view.year - 1}`, widthShare: 0.17 },
      { head: `Course ${view.year}`, widthShare: 0.17 },
      { head: `Course ${view.year + 1}`, widthShare: 0.17 },
      { head: 'Record', widthShare: 0.29 },
    ],
    rows: view.farm.plots.map((plot) => [
      `${plot.letter} ${plot.name}`,
      courseIn(plot.courseAtStart, view.year - 1),
      courseIn(plot.courseAtStart, view.year),
      courseIn(plot.courseAtStart, view.year + 1),
      recordOf(view, 'rotation', 'rotation'),
    ]),
  };
};

export const sowingPart: PartOf = (view) => {
  const sowings = view.chain.sowings.filter((sowing) => sowing.on >= view.from && sowing.on <= view.to);
  const without = sowings.filter((sowing) => sowing.seedLot === null).length;
  return {
    title: 'Sowings and plantings',
    sentence: `${sowings.length} sowings and plantings in ${view.year}; ${without} do not say which seed or plant lot was used.`,
    columns: [
      { head: 'Day', widthShare: 0.1 },
      { head: 'Plot', widthShare: 0.17 },
      { head: 'What', widthShare: 0.26 },
      { head: 'Seed or plant lot', widthShare: 0.16 },
      { head: 'Record', widthShare: 0.31 },
    ],
    rows: sowings.map((sowing) => [
      sowing.on,
      view.plotName(sowing.plot),
      `${view.cropName(sowing.what)}${sowing.variety === null ? '' : `, ${sowing.variety}`}`,
      sowing.seedLot ?? notRecorded,
      sowing.entry,
    ]),
  };
};
