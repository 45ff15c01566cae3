/** Courses of single plots and years, through the folder and the book. */
import { readFarmFolder, replay, writeFarmFolder } from '@leywright/book';
import { describe, expect, test } from 'vitest';
import { known } from './known.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const files = new Map([
  ['plots.csv', bytes('plot,letter,name,gross_ha,course_at_start\na,A,Ash,0.5,roots\n')],
  ['courses.csv', bytes('id,name\nroots,Roots\nley,Ley\n')],
  ['rotation.csv', bytes('course,key,what,sow,end\nroots,carrot,carrot-maincrop,05-05,10-04\n')],
  ['farm.json', bytes('{ "rotation": { "first_year": 2026 } }')],
  ['courses-by-year.csv', bytes('plot,year,course,state,reason\na,2027,roots,pencil,Ley failed\na,2028,,,\n')],
]);

describe('courses-by-year.csv', () => {
  const { farm, problems } = readFarmFolder(files, known);

  test('a plot may be on another course than the order brings, or on none', () => {
    expect(problems.filter((one) => one.gravity === 'stops')).toEqual([]);
    expect(farm?.rotation?.placed).toEqual([
      { plot: 'a', year: 2027, course: 'roots', state: 'pencil', reason: 'Ley failed' },
      { plot: 'a', year: 2028, course: null, state: 'agreed', reason: null },
    ]);
  });

  test('is written as it was read', () => {
    if (farm === null) throw new Error('no farm');
    const again = readFarmFolder(writeFarmFolder(farm, []), known);
    expect(again.farm?.rotation).toEqual(farm.rotation);
  });

  test('agreeing the rotation agrees what is placed', () => {
    if (farm === null) throw new Error('no farm');
    const entry = {
      v: 1,
      id: '01890a5d-ac96-774b-bcce-b302099a8057',
      farm: 'f',
      doneOn: '2026-11-25',
      doneAt: null,
      enteredAt: '2026-11-25T10:00:00Z',
      by: 'p',
      device: 'd',
      deviceSeq: 1,
      body: { kind: 'rotation-agreed', reasons: {} },
      amends: null,
      reason: null,
    } as never;
    const agreed = replay(farm, [entry]).farm.rotation;
    expect(agreed?.placed?.map((one) => one.state)).toEqual(['agreed', 'agreed']);
  });
});
