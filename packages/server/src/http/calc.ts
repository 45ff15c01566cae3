/** Science models by name. */

import { calcModelNamed, calcModels } from '@leywright/agronomy';
import { httpShapes } from '@leywright/api';
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import { refusal, refuse, sendProblems } from '../app/answer.ts';
import type { InputTypes } from '../app/input-types.ts';
import { paramChars } from '../app/limits.ts';

export function calcRoutes(app: FastifyInstance): void {
  const routes = app.withTypeProvider<InputTypes>();
  routes.get(
    '/api/calc',
    { schema: { summary: 'Science models by name', response: { 200: httpShapes.calcModels } } },
    async () => ({ models: describeModels() }),
  );

  routes.post(
    '/api/calc/:model',
    {
      schema: {
        summary: 'Run one model',
        params: z.object({ model: z.string().max(paramChars) }),
        body: httpShapes.calcInputs,
        response: { 200: httpShapes.calcAnswer, 404: httpShapes.problems, 422: httpShapes.problems },
      },
    },
    async (request, reply) => {
      const model = calcModelNamed(request.params.model);
      if (model === null) return refuse(reply, 404, 'no-such-model', { found: request.params.model });
      const answer = model.run(request.body);
      if (answer.kind === 'problems') {
        return sendProblems(
          reply,
          422,
          answer.problems.map(({ key, why, found }) => ({
            ...refusal(`calc-${why}`, { field: key, found }, { column: key }),
            found,
          })),
        );
      }
      return {
        model: request.params.model,
        outputs: { ...answer.outputs },
        units: Object.fromEntries(model.outputs.map(({ key, unit }) => [key, unit])),
      };
    },
  );
}

/** Every model with its inputs and outputs, by name. */
export function describeModels() {
  return Object.entries(calcModels).map(([name, { title, inputs, outputs, source }]) => ({
    model: name,
    title,
    source,
    inputs: inputs.map(({ key, unit, meaning, optional = false, kind = 'number' }) => ({
      key,
      unit,
      meaning,
      optional,
      kind,
    })),
    outputs: outputs.map(({ key, unit, meaning }) => ({ key, unit, meaning })),
  }));
}
