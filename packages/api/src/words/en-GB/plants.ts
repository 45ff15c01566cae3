/** Crops and covers as a sentence says them, by reference id, where the table's own name is too long for one. */
export const plantWords: Readonly<Record<string, string>> = {
  'cabbage-spring': 'spring cabbage',
  'cabbage-summer': 'summer cabbage',
  'cabbage-storage-white': 'white storage cabbage',
  calabrese: 'calabrese',
  'cauliflower-winter': 'winter cauliflower',
  'kale-black': 'black kale',
  'radish-winter': 'winter radish',
  rocket: 'rocket',
  'onion-set': 'onions from sets',
  'onion-drilled': 'drilled onions',
  'onion-module': 'onions from modules',
  'onion-overwintered': 'overwintered onions',
  shallot: 'shallots',
  'spring-onion': 'spring onions',
  garlic: 'garlic',
  'leek-late': 'late leek',
  'carrot-bunching': 'bunching carrot',
  'carrot-maincrop': 'maincrop carrot',
  celery: 'celery',
  'beetroot-maincrop': 'maincrop beetroot',
  'perpetual-spinach': 'perpetual spinach',
  'squash-maxima': 'winter squash',
  'cucumber-tunnel': 'cucumber',
  'tomato-tunnel': 'tomato',
  'pepper-tunnel': 'sweet pepper',
  'aubergine-tunnel': 'aubergine',
  'broad-bean-spring': 'spring broad bean',
  'broad-bean-autumn': 'autumn broad bean',
  pea: 'garden pea',
  'lettuce-head': 'headed lettuce',
  'lettuce-winter-tunnel': 'winter lettuce',
  endive: 'endive',
  'salad-leaf-mix': 'baby leaf salad',
  'winter-salad-tunnel': 'winter oriental leaves',
  'winter-purslane': 'winter purslane',
  'sweet-clover': 'sweet clover',
  trefoil: 'trefoil',
  'winter-vetch': 'winter vetch',
  'lupin-blue': 'blue lupin',
  'grazing-rye': 'grazing rye',
  'oat-winterkill': 'oats that frost kills',
  'black-oat': 'black oat',
  'fodder-radish': 'fodder radish',
  'mix-ley-clover-grass': 'the two-year ley',
  'mix-ley-lucerne-grass': 'the lucerne ley',
  'mix-ley-no-red-clover': 'the ley without red clover',
  'mix-rye-vetch': 'rye and vetch',
  'mix-oat-pea-vetch': 'oats, peas and vetch',
  'mix-phacelia-buckwheat': 'phacelia and buckwheat',
  'mix-undersow-low': 'white clover and trefoil',
  'mix-undersow-ley': 'the undersown ley',
};

/** First words that keep their capital in the middle of a sentence. */
const proper = new Set([
  'January',
  'Brussels',
  'French',
  'Florence',
  'Chinese',
  'Jerusalem',
  'Savoy',
  'Swiss',
  'Italian',
]);

/** A plant of the reference in the middle of a sentence: "curly kale", but "January King cabbage". */
export function plantInSentence(id: string, name: string): string {
  const said = plantWords[id];
  if (said !== undefined) return said;
  return proper.has(name.split(/[ ,]/)[0] ?? '') ? name : name.charAt(0).toLocaleLowerCase('en') + name.slice(1);
}
