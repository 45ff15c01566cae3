/**
 * Chance by name: the same seed, sample and name give the same number, whatever else is drawn and in whatever order. Two plans compared under
 * one seed meet the same years, and a succession added to one of them moves nobody else's luck.
 */

/** A name as a number, by FNV-1a. */
export function nameHash(name: string): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < name.length; at += 1) hash = Math.imul(hash ^ name.charCodeAt(at), 0x01000193);
  return hash >>> 0;
}

/** A draw from the normal distribution with mean 0 and deviation 1, for one name in one sample. */
export function normalScore(seed: number, sampleIndex: number, nameSeed: number): number {
  const first = (mixed(seed, sampleIndex, nameSeed) + 1) / 4294967297;
  const second = mixed(seed ^ 0x9e3779b9, sampleIndex, nameSeed) / 4294967296;
  return Math.sqrt(-2 * Math.log(first)) * Math.cos(2 * Math.PI * second);
}

/** Mixes three numbers of 32 bits (the closing steps of MurmurHash3, once for each). */
function mixed(a: number, b: number, c: number): number {
  let hash = stirred(a ^ 0x5bd1e995);
  hash = stirred(hash ^ Math.imul(b + 1, 0xcc9e2d51));
  return stirred(hash ^ c) >>> 0;
}

function stirred(value: number): number {
  let hash = value;
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return hash ^ (hash >>> 16);
}
