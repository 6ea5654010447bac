/**
 * Tables as RFC 4180 has them: CRLF between records, the same number of fields in each, quotes around a field that
 * holds a comma, a quote or a line end. Spreadsheets run a text that begins with certain signs as a formula; such a
 * text gets an apostrophe in front. Numbers are written as numbers and are never touched.
 */

export type CsvCell = string | number | undefined;

/** Begins a formula in one spreadsheet or another, also behind spaces; the wide forms of the signs too. */
const FORMULA = /^\s*[=+\-@\t\r|%＝＋－＠]/;

/**
 * @param head  names of the columns, each with its unit: `mass_kg`
 * @param rows  as many cells as there are columns; a number that is not finite, or undefined, leaves the field empty
 */
export function csvText(head: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [head, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(cell: CsvCell): string {
  if (cell === undefined) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  const harmless = FORMULA.test(cell) ? `'${cell}` : cell;
  return quoted(harmless);
}

/** A field of text, in quotes where it needs them; spaces belong to it. */
export function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * The records of a table, each a list of fields; the inverse of `csvText`, apostrophes left where they stand.
 * A bare LF ends a record too. Undefined where a quote is not closed, or text follows a closing quote.
 */
export function readCsv(text: string): readonly (readonly string[])[] | undefined {
  const records: string[][] = [];
  let at = 0;
  while (at < text.length) {
    const record: string[] = [];
    for (;;) {
      const read = text[at] === '"' ? quotedField(text, at) : plainField(text, at);
      if (!read) return undefined;
      record.push(read.value);
      at = read.end;
      if (text[at] !== ',') break;
      at += 1;
    }
    if (at < text.length) at += text.startsWith('\r\n', at) ? 2 : 1;
    records.push(record);
  }
  return records;
}

function plainField(text: string, start: number): { readonly value: string; readonly end: number } {
  let end = start;
  while (end < text.length && text[end] !== ',' && text[end] !== '\n' && !text.startsWith('\r\n', end))
    end += 1;
  return { value: text.slice(start, end), end };
}

function quotedField(
  text: string,
  start: number,
): { readonly value: string; readonly end: number } | undefined {
  let end = start + 1;
  for (;;) {
    const quote = text.indexOf('"', end);
    if (quote < 0) return undefined;
    end = quote + 1;
    if (text[end] !== '"') break;
    end += 1;
  }
  const closed =
    end === text.length || text[end] === ',' || text[end] === '\n' || text.startsWith('\r\n', end);
  return closed ? { value: text.slice(start + 1, end - 1).replaceAll('""', '"'), end } : undefined;
}
