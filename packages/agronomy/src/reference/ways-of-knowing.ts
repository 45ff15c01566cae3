/** How a figure is known: its text was read; recalled; a rule of thumb without source; worked out here from others. */
export const waysOfKnowing = ['verified', 'memory', 'common practice', 'derived'] as const;
export type HowKnown = (typeof waysOfKnowing)[number];
