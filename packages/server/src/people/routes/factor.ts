/** The second factor of one's own account. */
import { httpShapes, peopleShapes } from '@leywright/api';
import type { Account } from '@leywright/store';
import type { FastifyInstance } from 'fastify';
import { refuse } from '../../app/answer.ts';
import type { InputTypes } from '../../app/input-types.ts';
import { slowly } from '../../guards/rate.ts';
import { countFailure, factorOf, waitOf } from '../sign-in.ts';
import { hashOfRecoveryCode, newRecoveryCode, recoveryCodes } from '../ticket.ts';
import { base32, bytesOfBase32, factorAddress, stepOfCode } from '../totp.ts';
import { isPasswordGiven, type PeopleDesk, signedIn } from './signed-in.ts';

/** As long as the hash behind the codes, as RFC 4226 section 4 asks. */
const secretBytes = 20;
const refusals = { 403: httpShapes.problems, 409: httpShapes.problems, 422: httpShapes.problems };

export function factorRoutes(app: FastifyInstance, people: PeopleDesk): void {
  const { desk, access } = people;
  const routes = app.withTypeProvider<InputTypes>();
  routes.post(
    '/api/me/second-factor',
    {
      ...slowly(access),
      schema: {
        summary: 'Begin a second factor; one that is on stays on until a code of the new one is given',
        body: peopleShapes.factorBeginning,
        response: { 200: peopleShapes.newFactor, ...refusals },
      },
    },
    async (request, reply) => {
      const visitor = signedIn(request, reply);
      if (visitor === null) return reply;
      const { account } = visitor;
      if (!(await isPasswordGiven(people, { account, password: request.body.password }, reply))) return reply;
      if ((await factorOf(toolsOf(people), account, request.body.code ?? null)) !== 'right') {
        await countFailure(toolsOf(people), account);
        return refuse(reply, 403, 'code-refused');
      }
      const secret = base32(desk.random(secretBytes));
      await desk.store.people.changeAccount(account.farm, account.person, { secondFactor: { secret, isOn: false } });
      const farm = await desk.store.farm(account.farm);
      return { secret, address: factorAddress(secret, farm?.name ?? account.farm, account.person) };
    },
  );
  confirmRoute(app, people);
  removeRoute(app, people);
  recoveryRoute(app, people);
}

function toolsOf({ desk, access }: PeopleDesk) {
  return { store: desk.store, nowMs: access.nowMs };
}

function confirmRoute(app: FastifyInstance, people: PeopleDesk): void {
  const { desk, access } = people;
  app.withTypeProvider<InputTypes>().post(
    '/api/me/second-factor/confirm',
    {
      ...slowly(access),
      schema: {
        summary: 'Turn the second factor on by a code of it; answers recovery codes',
        body: peopleShapes.factorCode,
        response: { 200: peopleShapes.recoveryCodes, ...refusals },
      },
    },
    async (request, reply) => {
      const visitor = signedIn(request, reply);
      if (visitor === null) return reply;
      const { account, session } = visitor;
      const { farm, person, secondFactor } = account;
      if (secondFactor === null || secondFactor.isOn) return refuse(reply, 409, 'no-factor-begun');
      const waitS = waitOf(account, access.nowMs());
      if (waitS > 0) return refuse(reply, 429, 'wait-before-sign-in', { seconds: waitS });
      const step = stepOfCode(bytesOfBase32(secondFactor.secret), request.body.code, access.nowMs());
      if (step === null || !(await desk.store.people.takeStep(farm, person, step))) {
        await countFailure(toolsOf(people), account);
        return refuse(reply, 403, 'code-refused');
      }
      await desk.store.people.changeAccount(farm, person, { secondFactor: { ...secondFactor, isOn: true } });
      await desk.store.people.endSessions(farm, person, session.id);
      return { recoveryCodes: await freshCodes(people, account) };
    },
  );
}

function removeRoute(app: FastifyInstance, people: PeopleDesk): void {
  const { desk, access } = people;
  app.withTypeProvider<InputTypes>().post(
    '/api/me/second-factor/remove',
    {
      ...slowly(access),
      schema: {
        summary: 'Do without a second factor; growers cannot',
        body: peopleShapes.factorRemoval,
        response: { 200: peopleShapes.done, ...refusals },
      },
    },
    async (request, reply) => {
      const visitor = signedIn(request, reply);
      if (visitor === null) return reply;
      const { account } = visitor;
      if (account.role === 'grower') return refuse(reply, 409, 'factor-stays');
      if (!(await isPasswordGiven(people, { account, password: request.body.password }, reply))) return reply;
      if ((await factorOf(toolsOf(people), account, request.body.code)) !== 'right') {
        await countFailure(toolsOf(people), account);
        return refuse(reply, 403, 'code-refused');
      }
      await desk.store.people.changeAccount(account.farm, account.person, { secondFactor: null });
      await desk.store.people.putRecoveryCodes(account.farm, account.person, []);
      return { done: true };
    },
  );
}

function recoveryRoute(app: FastifyInstance, people: PeopleDesk): void {
  app.withTypeProvider<InputTypes>().post(
    '/api/me/recovery-codes',
    {
      ...slowly(people.access),
      schema: {
        summary: 'New recovery codes in the place of the old',
        body: peopleShapes.passwordAgain,
        response: { 200: peopleShapes.recoveryCodes, ...refusals },
      },
    },
    async (request, reply) => {
      const visitor = signedIn(request, reply);
      if (visitor === null) return reply;
      const { account } = visitor;
      if (!(await isPasswordGiven(people, { account, password: request.body.password }, reply))) return reply;
      if (account.secondFactor?.isOn !== true) return refuse(reply, 409, 'no-factor-begun');
      return { recoveryCodes: await freshCodes(people, account) };
    },
  );
}

async function freshCodes({ desk }: PeopleDesk, { farm, person }: Account): Promise<readonly string[]> {
  const codes = Array.from({ length: recoveryCodes }, () => newRecoveryCode(desk.random));
  await desk.store.people.putRecoveryCodes(farm, person, codes.map(hashOfRecoveryCode));
  return codes;
}
