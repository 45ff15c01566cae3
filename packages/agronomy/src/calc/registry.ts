/** All models by name, and running one. */
import { airModels, radiationModels } from './air-models.ts';
import type { CalcAnswer, CalcModel, ReadText } from './calc-model.ts';
import { canopyModels, fixationModels } from './canopy-models.ts';
import { evaporationModels } from './evaporation-models.ts';
import { carbonModels } from './fertility/carbon-models.ts';
import { humusModels } from './fertility/humus-models.ts';
import { mineralModels } from './fertility/mineral-models.ts';
import { shelterModels } from './habitat/shelter-models.ts';
import { pestModels } from './pests/pest-models.ts';
import { soilModels } from './soil/soil-models.ts';
import { sowingModels } from './sowing-models.ts';
import { thermalModels } from './thermal-models.ts';
import { drawnModels } from './weather/drawn-models.ts';

export const calcModels: Readonly<Record<string, CalcModel>> = {
  ...airModels,
  ...radiationModels,
  ...evaporationModels,
  ...thermalModels,
  ...canopyModels,
  ...fixationModels,
  ...sowingModels,
  ...soilModels,
  ...carbonModels,
  ...humusModels,
  ...mineralModels,
  ...drawnModels,
  ...shelterModels,
  ...pestModels,
};

/** The model of a name; null when there is none. Asked by own key, so that a model called `constructor` is none. */
export function calcModelNamed(name: string): CalcModel | null {
  return Object.hasOwn(calcModels, name) ? (calcModels[name] ?? null) : null;
}

/** Runs a model by name; null when there is none of that name. */
export function runCalc(
  name: string,
  inputs: Readonly<Record<string, unknown>>,
  readText?: ReadText,
): CalcAnswer | null {
  return calcModelNamed(name)?.run(inputs, readText) ?? null;
}
