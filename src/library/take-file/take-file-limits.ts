const mebibyte = 1024 * 1024;

/** What a take file may hold at most; far more than practice needs, and little enough for a phone. */
export const takeFileLimits = {
  archiveBytes: 1024 * mebibyte,
  /** All files of the archive together, unpacked. */
  unpackedBytes: 1024 * mebibyte,
  files: 10_000,
  takes: 2000,
  nameCharacters: 300,
  manifestBytes: 8 * mebibyte,
  audioBytes: 512 * mebibyte,
  resultBytes: 16 * mebibyte,
  sheetBytes: mebibyte,
  remarksBytes: 4 * mebibyte,
} as const;
