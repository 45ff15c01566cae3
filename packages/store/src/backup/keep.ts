/** Which of the scheduled backups stay: each of the last days, then the first of each month. */

const DAYS_KEPT = 14;
const MONTHS_KEPT = 24;
const shape = /^leywright-(\d{4}-\d{2}-\d{2})\.sqlite$/;

/** Name of the backup of a day. */
export function backupName(day: string): string {
  return `leywright-${day}.sqlite`;
}

/** Names that may be taken away. Files that do not bear such a name are never among them. */
export function backupsToTakeAway(names: readonly string[]): readonly string[] {
  const days = names.flatMap((name) => shape.exec(name)?.[1] ?? []).sort();
  const firsts = days.filter((day, at) => day.slice(0, 7) !== days[at - 1]?.slice(0, 7));
  const kept = new Set([...days.slice(-DAYS_KEPT), ...firsts.slice(-MONTHS_KEPT)]);
  return days.filter((day) => !kept.has(day)).map(backupName);
}
