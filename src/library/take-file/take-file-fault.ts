export type TakeFileFaultCode =
  | 'not-a-zip'
  | 'archive-too-large'
  | 'archive-damaged'
  | 'too-many-files'
  | 'locked'
  | 'packed-unusually'
  | 'unsafe-name'
  | 'name-twice'
  | 'no-manifest'
  | 'manifest-unreadable'
  | 'manifest-newer'
  | 'file-missing'
  | 'file-too-large'
  | 'file-damaged'
  | 'hash-wrong'
  | 'sheet-unreadable'
  | 'result-unreadable'
  | 'result-newer'
  | 'remarks-unreadable';

export interface TakeFileFault {
  readonly code: TakeFileFaultCode;
  readonly facts: Readonly<Record<string, string | number>>;
}

/** Thrown inside the reader only; its callers get the fault as an outcome. */
export class TakeFileError extends Error {
  readonly fault: TakeFileFault;
  constructor(code: TakeFileFaultCode, facts: TakeFileFault['facts'] = {}) {
    super(code);
    this.name = 'TakeFileError';
    this.fault = { code, facts };
  }
}
