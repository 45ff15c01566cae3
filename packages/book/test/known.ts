import type { KnownNames } from '../src/index.ts';

/** A few rows such as the reference tables have; ids and names are those of our tables, the rest does not matter here. */
export const known: KnownNames = {
  crops: new Map([
    ['carrot-maincrop', 'Carrot, maincrop'],
    ['potato-maincrop', 'Potato, maincrop'],
    ['leek-mid', 'Leek, mid-season'],
    ['kale', 'Kale'],
    ['onion-set', 'Onion from sets'],
  ]),
  covers: new Map([
    ['mix-rye-vetch', 'Winter mix: grazing rye and winter vetch'],
    ['mix-ley-clover-grass', 'Two-year ley: red clover, white clover, cocksfoot'],
    ['white-mustard', 'White mustard'],
  ]),
  organisms: new Map([
    ['clubroot', 'Plasmodiophora brassicae'],
    ['white-rot', 'Stromatinia cepivora'],
  ]),
  families: ['Apiaceae', 'Brassicaceae', 'Amaryllidaceae', 'Solanaceae', 'Fabaceae'],
  storeKinds: ['cold', 'cool', 'ambient_frost_free', 'ambient_warm', 'clamp', 'field'],
};
