// Says whether this Node is new enough. Written so that a very old Node can read it too.

const AT_LEAST = [20, 11];

/**
 * @param {string} version such as 18.19.1
 * @returns {string | null} what to do, in one sentence; null when it is new enough
 */
export function refusalOf(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const [wantMajor = 0, wantMinor = 0] = AT_LEAST;
  if (major > wantMajor || (major === wantMajor && minor >= wantMinor)) return null;
  return (
    `Leywright needs Node ${AT_LEAST.join('.')} or newer and this is Node ${version}: ` +
    'install a newer Node (from your system, or from nodejs.org), then run the same command again.'
  );
}
