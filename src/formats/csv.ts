/** Null is an empty field. */
export type CsvField = string | number | null;

/**
 * Comma-separated values after RFC 4180: a line end of CR LF after every record, fields with a comma, a quote or a
 * line break in quotes, quotes inside them doubled. Numbers are written so that reading gives the same number back.
 * Throws a RangeError for NaN and infinities, which the format can't hold.
 *
 * @example
 * csv([['name', 'ms'], ['Ada "R"', -1.5]]); // 'name,ms\r\n"Ada ""R""",-1.5\r\n'
 */
export function csv(records: readonly (readonly CsvField[])[]): string {
  return records.map((record) => `${record.map(field).join(',')}\r\n`).join('');
}

function field(value: CsvField): string {
  if (value === null) return '';
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new RangeError(`${value} can't stand in a CSV file.`);
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
