import { expect, test } from 'vitest';
import { checkTypes, parts } from '../scripts/types.mjs';

test.for(parts)('types agree: $says', async ({ settings }) => {
  const { faults } = await checkTypes(settings);
  expect(faults.length, `\n${faults.slice(0, 40).join('\n')}\n\nRun "npm run types" to see all of them.\n`).toBe(0);
});
