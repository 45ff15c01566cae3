/** The light the app is read in. Kept on this machine. */
export const faces = ['system', 'light', 'dark', 'glare'] as const;
export type Face = (typeof faces)[number];

const key = 'leywright.face';

export function chosenFace(): Face {
  const kept = window.localStorage.getItem(key);
  return faces.find((face) => face === kept) ?? 'system';
}

/** Sets the face of the whole page; `system` follows the machine. */
export function showFace(face: Face): void {
  window.localStorage.setItem(key, face);
  const isDark = window.matchMedia('(prefers-color-scheme: dark)').matches;
  document.documentElement.dataset['face'] = face === 'system' ? (isDark ? 'dark' : 'light') : face;
}
