/** Households: kept apart from the book, handed out when asked for, erased when asked for. */
import { httpShapes, peopleShapes } from '@leywright/api';
import { asDay, type FarmId, readId } from '@leywright/measures';
import type { Household, StoredFarm } from '@leywright/store';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { z } from 'zod';
import { refuse } from '../../app/answer.ts';
import type { InputTypes } from '../../app/input-types.ts';
import { paramChars } from '../../app/limits.ts';
import { countBySize, keptFor, keptUntil } from '../../households/keeping.ts';
import { farmParams } from '../../http/asked-plan.ts';
import { seenHousehold } from '../see.ts';
import { sights } from '../sight.ts';
import { roleOf } from '../visitor.ts';
import type { PeopleDesk } from './signed-in.ts';

const householdParams = farmParams.extend({ household: z.string().max(paramChars) });
const refusals = { 404: httpShapes.problems, 409: httpShapes.problems, 422: httpShapes.problems };

export function householdRoutes(app: FastifyInstance, people: PeopleDesk): void {
  listRoute(app, people);
  putRoute(app, people);
  exportRoute(app, people);
  eraseRoute(app, people);
}

function listRoute(app: FastifyInstance, people: PeopleDesk): void {
  const { desk } = people;
  app.withTypeProvider<InputTypes>().get(
    '/api/farms/:farm/households',
    {
      schema: {
        summary: 'Households, as far as one’s role needs them',
        params: farmParams,
        response: { 200: peopleShapes.households, 404: httpShapes.problems },
      },
    },
    async (request, reply) => {
      const farm = await knownFarm(people, request.params.farm, reply);
      if (farm === null) return reply;
      const role = roleOf(request.visitor);
      const sees = role === null ? 'none' : sights[role].households;
      const all = await desk.store.households.households(farm.id);
      const seen = all.map((one) => seenHousehold(one, sees)).filter((one) => one !== null);
      return { households: seen, bySize: countBySize(all, desk.clock.today()) };
    },
  );
}

function putRoute(app: FastifyInstance, people: PeopleDesk): void {
  const { desk } = people;
  app.withTypeProvider<InputTypes>().put(
    '/api/farms/:farm/households/:household',
    {
      schema: {
        summary: 'Write a household, new or over the one of this code',
        params: householdParams,
        body: peopleShapes.newHousehold,
        response: { 200: peopleShapes.household, ...refusals },
      },
    },
    async (request, reply) => {
      const farm = await knownFarm(people, request.params.farm, reply);
      if (farm === null) return reply;
      const id = readId(request.params.household);
      if (id === null) return refuse(reply, 422, 'not-a-household-id', { found: request.params.household });
      const { size, drop, from, to, person } = request.body;
      if (to !== null && to < from) return refuse(reply, 422, 'household-days');
      const household = { id, size, drop, from: asDay(from), to: to === null ? null : asDay(to), person };
      const isWritten = await desk.store.households.putHousehold(farm.id, household);
      return isWritten ? { ...household, erasedAt: null } : refuse(reply, 409, 'household-erased', { found: id });
    },
  );
}

function exportRoute(app: FastifyInstance, people: PeopleDesk): void {
  app.withTypeProvider<InputTypes>().get(
    '/api/farms/:farm/households/:household/export',
    {
      schema: {
        summary: 'Everything kept about a household, to be handed to them',
        params: householdParams,
        response: { 200: peopleShapes.householdExport, ...refusals },
      },
    },
    async (request, reply) => {
      const asked = await askedHousehold(people, request.params, reply);
      if (asked === null) return reply;
      const { farm, household } = asked;
      const exportedAt = new Date(people.access.nowMs()).toISOString();
      return {
        farm: farm.id,
        farmName: farm.name,
        household,
        exportedAt,
        keptFor,
        keptUntil: keptUntil(household),
      };
    },
  );
}

function eraseRoute(app: FastifyInstance, people: PeopleDesk): void {
  app.withTypeProvider<InputTypes>().post(
    '/api/farms/:farm/households/:household/erase',
    {
      schema: {
        summary: 'Take all personal facts of a household away for good; code, size, drop and days count on',
        params: householdParams,
        response: { 200: peopleShapes.household, ...refusals },
      },
    },
    async (request, reply) => {
      const asked = await askedHousehold(people, request.params, reply);
      if (asked === null) return reply;
      const { farm, household } = asked;
      const { store } = people.desk;
      await store.households.eraseHousehold(farm.id, household.id, new Date(people.access.nowMs()).toISOString());
      return store.households.household(farm.id, household.id);
    },
  );
}

async function askedHousehold(
  people: PeopleDesk,
  asked: { readonly farm: string; readonly household: string },
  reply: FastifyReply,
): Promise<{ readonly farm: StoredFarm; readonly household: Household } | null> {
  const farm = await knownFarm(people, asked.farm, reply);
  if (farm === null) return null;
  const id = readId(asked.household);
  const household = id === null ? null : await people.desk.store.households.household(farm.id, id);
  if (household === null) refuse(reply, 404, 'no-such-household', { found: asked.household });
  return household === null ? null : { farm, household };
}

async function knownFarm({ desk }: PeopleDesk, asked: string, reply: FastifyReply): Promise<StoredFarm | null> {
  const id = readId<FarmId>(asked);
  const farm = id === null ? null : await desk.store.farm(id);
  if (farm === null) refuse(reply, 404, 'no-such-farm', { found: asked });
  return farm;
}
