/**
 * The end of a switch over a closed list: a new member does not compile until it has a case.
 * Throws if it is reached all the same, which means that text came in past its reader.
 */
export function unreachable(member: never): never {
  throw new Error(`No case for ${JSON.stringify(member)}. Was it read without its reader?`);
}
