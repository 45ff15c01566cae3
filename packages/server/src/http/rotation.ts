/** A rotation proposed for a farm. It changes nothing: what is agreed comes in as entries. */
import { rotationShapes, roundForJson, tellRotation } from '@leywright/api';
import { farmDay } from '@leywright/book';
import { rotations } from '@leywright/planner';
import type { FastifyInstance } from 'fastify';
import type { Desk } from '../app/desk.ts';
import type { InputTypes } from '../app/input-types.ts';
import { knownOnOf } from '../people/visitor.ts';
import { type HighsSolver, highsSolver } from '../solver/highs-solver.ts';
import { askedFarm, farmParams } from './asked-plan.ts';

export function rotationRoutes(app: FastifyInstance, desk: Desk): void {
  const routes = app.withTypeProvider<InputTypes>();
  let solver: HighsSolver | null = null;
  // One after another: each fills a thread, and a farm is asked by few people.
  let last: Promise<unknown> = Promise.resolve();
  app.addHook('onClose', async () => solver?.close());
  routes.post(
    '/api/farms/:farm/rotation',
    {
      schema: {
        summary: 'Propose the rotation, or say which rules conflict; nothing is changed',
        params: farmParams,
        body: rotationShapes.rotationWish,
        response: { 200: rotationShapes.rotation },
      },
    },
    async (request, reply) => {
      const open = await askedFarm(desk, request, reply);
      if (open === null) return reply;
      const { seconds, ...wish } = request.body;
      const today = knownOnOf(request.visitor) ?? farmDay(open.farm.about, desk.clock.today(), desk.clock.isDaySaid);
      solver ??= highsSolver();
      const how = {
        ask: { timeLimitS: seconds, gapShare: 0, stop: { isStopped: () => request.raw.socket.destroyed === true } },
        solver,
      };
      const proposed = last.then(() => rotations.proposeRotation(open.farm, { ...wish, today }, how));
      last = proposed.catch(() => undefined);
      return reply.send(roundForJson(tellRotation(await proposed, { farm: open.farm, today })) as never);
    },
  );
}
