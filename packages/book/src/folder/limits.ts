/** Sizes over which a folder is refused before it is read: far above any farm, far below what harms a phone. */
export const limits = {
  fileBytes: 16_000_000,
  /** The book grows for thirty years. */
  bookBytes: 400_000_000,
  folderBytes: 500_000_000,
  files: 200,
  /** Problems reported from one file; the rest are counted. */
  problemsAFile: 500,
} as const;
