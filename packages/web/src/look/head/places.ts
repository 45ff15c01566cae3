/** The places of the app, in the order they stand on the furrows. Places still to be built are not listed. */
export const placeNames = ['day', 'ground', 'boxes', 'work'] as const;
export type PlaceName = (typeof placeNames)[number];
