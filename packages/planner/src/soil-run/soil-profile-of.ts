/**
 * The ground under a plot as the daily account needs it: from the plot's own word for its soil and its latest sample.
 *
 * Source  textures: agronomy soil/soil-profile.ts; nitrogen in the soil from organic matter: 58 % carbon in it, C:N 11 (common practice).
 * Leaves out  stones, pans and layers that differ; a plot whose soil nobody named is taken as loam, and says so.
 */
import { type SoilProfile, soilAccount, type Texture } from '@leywright/agronomy';
import type { Plot, SoilSample } from '@leywright/book';

/** Words people write, the longest first; the table has no row for the loams with sand and clay in them. */
const textureWords: readonly (readonly [RegExp, Texture])[] = [
  [/silt\w* clay loam/, 'silt clay loam'],
  [/sand\w* clay loam|clay loam/, 'loam'],
  [/silt\w* clay/, 'silty clay'],
  [/loamy sand/, 'loamy sand'],
  [/sand\w* (silt )?loam/, 'sandy loam'],
  [/silt\w* loam/, 'silt loam'],
  [/clay/, 'clay'],
  [/loam/, 'loam'],
  [/silt/, 'silt'],
  [/sand/, 'sand'],
];

/** Nitrogen for each per cent of organic matter. */
const nitrogenPerMatterRatio = 0.58 / 11;

export interface PlotProfile {
  readonly profile: SoilProfile;
  readonly texture: Texture;
  readonly isTextureSaid: boolean;
  readonly isMatterSampled: boolean;
}

export function profileOf(plot: Plot, samples: readonly SoilSample[]): PlotProfile {
  const said = plot.soil?.toLowerCase() ?? '';
  const found = textureWords.find(([words]) => words.test(said))?.[1] ?? null;
  const texture = found ?? 'loam';
  const usual = soilAccount.profiles.profileOfTexture(texture);
  const matterPct = latestMatterPct(samples.filter((one) => one.plot === plot.id));
  return {
    profile: matterPct === null ? usual : { ...usual, totalNPct: matterPct * nitrogenPerMatterRatio },
    texture,
    isTextureSaid: found !== null,
    isMatterSampled: matterPct !== null,
  };
}

function latestMatterPct(samples: readonly SoilSample[]): number | null {
  let latest: SoilSample | null = null;
  for (const one of samples)
    if (one.organicMatterPct !== null && (latest === null || one.takenOn > latest.takenOn)) latest = one;
  return latest?.organicMatterPct ?? null;
}
