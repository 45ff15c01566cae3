/** Water, nitrogen and warmth of the soil: all models of this folder by name. */
import type { CalcModel } from '../calc-model.ts';
import { gasModels, soilTemperatureModels } from './gas-models.ts';
import { leachingModels, residueModels } from './nitrogen-models.ts';
import { coefficientModels, waterModels } from './water-models.ts';

export const soilModels: Readonly<Record<string, CalcModel>> = {
  ...waterModels,
  ...coefficientModels,
  ...residueModels,
  ...leachingModels,
  ...gasModels,
  ...soilTemperatureModels,
};
