/** The water models under one name. */
export * as availableWater from './available-water.ts';
export * as cropCoefficient from './crop-coefficient.ts';
export * as runoff from './runoff.ts';
export * as surface from './surface-evaporation.ts';
