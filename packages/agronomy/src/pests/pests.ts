/** Warnings of pests and blight by their published rules. */
export * from './blight.ts';
export * from './pest-sums.ts';
