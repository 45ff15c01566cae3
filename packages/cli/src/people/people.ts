/** Who may sign in to a farm of a store: invited, looked at and ended at the machine itself. */
import { randomBytes } from 'node:crypto';
import { parseArgs } from 'node:util';
import { refusalSentence } from '@leywright/api';
import { nearest, type Role, roles } from '@leywright/book';
import { type Day, type PersonId, readDay, readId } from '@leywright/measures';
import { loadPeople, usualPort } from '@leywright/server';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { textTable } from '../tables/text-table.ts';
import { said } from '../words.ts';
import { type StoreFarm, withStoreFarm } from './store-farm.ts';

const deeds = ['list', 'invite', 'end', 'give-back', 'sign-out', 'factor-off'] as const;
type Deed = (typeof deeds)[number];
const usualDays = 7;
const longestDays = 30;

export async function peopleCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const read = parse(args);
  if ('sentence' in read) return refuse(io, [read.sentence]);
  const { values, positionals } = read;
  const [word, farm, person, ...more] = positionals;
  const deed = deeds.find((one) => one === word);
  if (deed === undefined)
    return refuse(io, [said.noDeed('people', word, nearest(word ?? '', deeds)[0] ?? null, deeds)]);
  const problems = more.map(said.tooMany);
  if (deed !== 'list' && person === undefined) problems.push(said.whichPerson);
  if (problems.length > 0) return refuse(io, problems);
  const asked = { farm, data: values.data };
  return withStoreFarm(asked, io, (open) => {
    if (deed === 'list' || person === undefined) return list(open, values.json === true, io);
    return deed === 'invite' ? inviteOne(open, { person, values }, io) : doOne(open, { person, deed }, io);
  });
}

type Values = Exclude<ReturnType<typeof parse>, { sentence: string }>['values'];

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        data: { type: 'string' },
        role: { type: 'string' },
        name: { type: 'string' },
        'as-known-on': { type: 'string' },
        days: { type: 'string' },
        address: { type: 'string' },
      },
    });
  } catch (error) {
    return { sentence: error instanceof Error ? error.message : String(error) };
  }
}

async function list({ store, farm }: StoreFarm, asJson: boolean, io: Io): Promise<ExitCode> {
  const people = (await store.people.accounts(farm)).map(
    ({ person, name, role, asKnownOn, secondFactor, endedAt }) => ({
      person,
      name,
      role,
      asKnownOn,
      secondFactor: secondFactor?.isOn === true ? 'on' : 'off',
      endedAt,
    }),
  );
  const now = new Date().toISOString();
  const invited = (await store.people.invitations(farm))
    .filter(({ endsAt }) => endsAt > now)
    .map(({ person, name, role, endsAt }) => ({ person, name, role, endsAt }));
  if (asJson) printJson(io, { people, invited });
  else if (people.length + invited.length === 0) io.out(said.nobodyYet);
  else
    io.out(
      textTable(
        ['person', 'name', 'role', 'second factor', 'standing'].map((head) => ({ head })),
        [
          ...people.map((one) => [
            one.person,
            one.name,
            one.asKnownOn === null ? one.role : `${one.role}, as known on ${one.asKnownOn}`,
            one.secondFactor,
            one.endedAt === null ? 'may sign in' : `ended ${one.endedAt.slice(0, 10)}`,
          ]),
          ...invited.map((one) => [one.person, one.name, one.role, '', `invited until ${one.endsAt.slice(0, 10)}`]),
        ],
      ),
    );
  return 0;
}

async function inviteOne(
  { store, farm }: StoreFarm,
  { person, values }: { readonly person: string; readonly values: Values },
  io: Io,
): Promise<ExitCode> {
  const wish = readInvite(values);
  if ('problems' in wish) return refuse(io, wish.problems);
  const { inviteAtMachine } = await loadPeople();
  const invited = await inviteAtMachine(
    { store, random: (bytes) => randomBytes(bytes), nowMs: () => Date.now() },
    { farm, person, name: values.name ?? person, role: wish.role, asKnownOn: wish.asKnownOn, days: wish.days },
    new URL(wish.address).origin,
  );
  if (invited.kind === 'refused') return refuse(io, [refusalSentence(invited.code, { found: person })]);
  const { name, role, endsAt } = invited.invitation;
  if (values.json === true) printJson(io, { person, role, endsAt, link: invited.link });
  else io.out(said.invited({ name, until: endsAt.slice(0, 10), link: invited.link ?? '' }));
  return 0;
}

interface InviteRead {
  readonly role: Role;
  readonly asKnownOn: Day | null;
  readonly days: number;
  readonly address: string;
}

function readInvite(values: Values): InviteRead | { readonly problems: readonly string[] } {
  const role = roles.find((one) => one === values.role);
  const known = values['as-known-on'];
  const asKnownOn = known === undefined ? null : readDay(known);
  const days = Number(values.days ?? usualDays);
  const address = values.address ?? `http://127.0.0.1:${usualPort}`;
  const problems = [
    role === undefined ? said.notARole(values.role, roles) : null,
    known !== undefined && asKnownOn === null ? said.notAKnownDay(known) : null,
    Number.isInteger(days) && days >= 1 && days <= longestDays ? null : said.notDays(String(values.days)),
    URL.canParse(address) ? null : refusalSentence('bad-address', { found: address }),
  ].filter((problem) => problem !== null);
  return problems.length > 0 || role === undefined ? { problems } : { role, asKnownOn, days, address };
}

async function doOne(
  { store, farm }: StoreFarm,
  asked: { readonly person: string; readonly deed: Exclude<Deed, 'list' | 'invite'> },
  io: Io,
): Promise<ExitCode> {
  const { doToAccount } = await loadPeople();
  const person = readId<PersonId>(asked.person);
  const tools = { store, random: (bytes: number) => randomBytes(bytes), nowMs: () => Date.now() };
  const refusal = person === null ? 'no-such-person' : await doToAccount(tools, { farm, person }, asked.deed);
  if (refusal !== null) return refuse(io, [refusalSentence(refusal, { found: asked.person })]);
  io.out(said.didToAccount[asked.deed](asked.person));
  return 0;
}
