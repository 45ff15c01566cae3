/** The models of nitrogen in the ground under one name. */
export * as critical from './critical-nitrogen.ts';
export * as denitrification from './denitrification.ts';
export * as fixationFall from './fixation-fall.ts';
export * as leaching from './leaching.ts';
export * as ammonia from './mulch-ammonia.ts';
export * as release from './release-factors.ts';
export * as residueNitrogen from './residue-nitrogen.ts';
export * as residue from './residue-release.ts';
