/** Languages the words exist in. Another one is a folder beside `en-GB` with the same tables, and a line here and in `tables.ts`. */
export const languages = ['en-GB'] as const;
export type Language = (typeof languages)[number];
