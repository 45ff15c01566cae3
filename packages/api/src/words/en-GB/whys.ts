/** Titles of derivations and words for what their doubt is made of, by code. */
export const whyTitles: Readonly<Record<string, string>> = {};

export const doubtWords: Readonly<Record<string, string>> = {};
