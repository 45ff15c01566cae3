/** What could be done about a finding, by the code of the mend. */
export const mendWords: Readonly<Record<string, string>> = {};
