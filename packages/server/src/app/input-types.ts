import type { FastifyTypeProvider } from 'fastify';
import type { z } from 'zod';

/**
 * What comes in has the type of its shape. What goes out is readonly all through, which shapes cannot say; the tests hold every answer
 * to the shape that describes it.
 */
export interface InputTypes extends FastifyTypeProvider {
  readonly validator: this['schema'] extends z.ZodType ? z.output<this['schema']> : unknown;
  readonly serializer: unknown;
}
