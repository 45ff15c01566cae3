/** What is let in. A farm folder of ten years with daily weather and its book is under 10 MB. */
export const bodyLimitBytes = 32_000_000;
/** Most entries answered at once. */
export const pageEntries = 2000;
/** Longest part of an address. */
export const paramChars = 300;
