/** A step from one state of the schema to the next. Never changed once it has been released. */
export interface Migration {
  /** What it does, in a few words. */
  readonly title: string;
  /** Statements, run in this order in one transaction. */
  readonly statements: readonly string[];
}
