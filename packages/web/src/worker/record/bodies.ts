/** What a person did or saw, as bodies of entries. */
import type { EntryBody } from '@leywright/book';
import type { Job, Plan } from '@leywright/planner';
import type { DidVerb, RecordWish } from './wish.ts';

/** Empty when the plan no longer knows the jobs. */
export function bodiesOf(wish: RecordWish, plan: Plan): readonly EntryBody[] {
  switch (wish.kind) {
    case 'jobs':
      return jobBodies(wish, plan);
    case 'did':
      return didBodies(wish);
    case 'saw': {
      const { seen, plot, crop, what, count, of, words } = wish;
      return [{ kind: 'observation', plot, what, count, of, words, seen, ...(crop === null ? {} : { crop }) }];
    }
  }
}

function jobBodies({ jobs, kg }: Extract<RecordWish, { kind: 'jobs' }>, plan: Plan): readonly EntryBody[] {
  const known = plan.work.jobs.filter(({ id }) => jobs.includes(id));
  const done = known.map(({ id }): EntryBody => ({ kind: 'job-done', job: id, share: 1, hours: null }));
  const lifted = kg === null ? [] : known.filter(isLifting).slice(0, 1);
  return [...done, ...lifted.map((job) => harvest({ ...job, kg }))];
}

/** Whether the job brings something in that can be weighed. */
export function isLifting({ kind, crop, amountUnit }: Pick<Job, 'kind' | 'crop' | 'amountUnit'>): boolean {
  return (kind === 'lift' || kind === 'cut') && crop !== null && amountUnit === 'kg';
}

interface Lifted {
  readonly stand: string | null;
  readonly plot: string | null;
  readonly crop: string | null;
  readonly kg: number | null;
}

function harvest({ stand, plot, crop, kg }: Lifted): EntryBody {
  return {
    ...{ kind: 'harvest', stand, plot, crop: crop ?? '', grossKg: kg, count: null, unit: 'kg' },
    ...{ gradedOutShare: null, into: 'box', store: null },
  };
}

function didBodies({ verb, plot, crop, kg, hours, words }: Extract<RecordWish, { kind: 'did' }>): readonly EntryBody[] {
  if (verb === 'lifted' && crop !== null) return [harvest({ stand: null, plot, crop, kg })];
  return [{ kind: 'job-done', job: ownJob(verb, { plot, crop, words }), share: 1, hours }];
}

/** Work that no plan names: `own/weeded/c/kale`, with the person's own words at the end. */
function ownJob(
  verb: DidVerb,
  at: { readonly plot: string | null; readonly crop: string | null; readonly words: string | null },
): string {
  return ['own', verb, at.plot ?? '', at.crop ?? '', at.words ?? ''].join('/');
}

export interface OwnJob {
  readonly verb: string;
  readonly plot: string | null;
  readonly crop: string | null;
  readonly words: string | null;
}

/** Reads back what `didBodies` wrote; null for a planned job. */
export function readOwnJob(job: string): OwnJob | null {
  const [own, verb = '', plot = '', crop = '', ...words] = job.split('/');
  if (own !== 'own') return null;
  const said = words.join('/');
  return { verb, plot: plot === '' ? null : plot, crop: crop === '' ? null : crop, words: said === '' ? null : said };
}
