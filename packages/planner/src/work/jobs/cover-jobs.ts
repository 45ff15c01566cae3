/** Leys and covers: sown or undersown, mown, turned in. */
import { dayNumber } from '@leywright/measures';
import { mowingDays } from '../../cover/mowing.ts';
import type { Job } from '../../plan/work.ts';
import { addHours, labourHours, type Rated } from '../rates.ts';
import { jobOf, ownOf, type StandAt } from './job.ts';

export function coverJobs(at: StandAt): readonly (Job | null)[] {
  const { stand, measures } = at;
  if (stand.kind === 'crop') return [];
  const from = dayNumber(stand.from);
  const isUndersown = stand.undersownIn !== null;
  const sow = jobOf({
    kind: isUndersown ? 'undersow' : 'sow-cover',
    stand: at,
    fromDay: from,
    rated: labourHours(isUndersown ? 'undersow' : 'sow-cover', measures),
  });
  return [sow, ...mowJobs(at), turnIn(at)];
}

function mowJobs(at: StandAt): (Job | null)[] {
  if (at.stand.kind !== 'ley') return [];
  const host = at.plot.stands.find((one) => one.id === at.stand.undersownIn);
  const sownOnDay = dayNumber(at.stand.from);
  const days = mowingDays(at.run.input.climate, {
    sownOnDay,
    aloneFromDay: host === undefined ? sownOnDay : dayNumber(host.to),
    toDay: dayNumber(at.stand.to),
  });
  const times = ownOf({ kind: 'mow', stand: at })?.times ?? days.length;
  return days
    .slice(0, times)
    .map((day, cut) =>
      jobOf({ kind: 'mow', stand: at, nth: cut + 1, fromDay: day, rated: labourHours('mow-cover', at.measures) }),
    );
}

/** A ley is ploughed and worked down, a cover worked in shallowly twice (middle of one to three passes); what the frost kills needs nothing. */
function turnIn(at: StandAt): Job | null {
  if (at.stand.endedBy === 'frost-killed') return null;
  const rows = at.stand.kind === 'ley' ? ['plough', 'power-harrow'] : ['disc-incorporate', 'disc-incorporate'];
  const rated = rows.flatMap((row) => labourHours(row, at.measures) ?? []);
  const [first, second] = rated;
  const both: Rated | null =
    first === undefined || second === undefined
      ? null
      : { hours: addHours(first.hours, second.hours), basis: first.basis };
  return jobOf({ kind: 'turn-in', stand: at, fromDay: dayNumber(at.stand.to) - 1, rated: both });
}
