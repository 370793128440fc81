/** Columns that hold numbers stand to the right. */
const isNumber = (text: string): boolean => /^[-+−]?[\d.,]+(\s?(%|d|h|m²|kPa|°C))?$/.test(text) || text === '' || text === '–';

/** A table for a terminal: one line per row, columns as wide as they need, two spaces between. */
export const textTable = (heads: readonly string[], rows: readonly (readonly string[])[]): readonly string[] => {
  const all = [heads, ...rows];
  const widths = heads.map((_, column) => Math.max(...all.map((row) => (row[column] ?? '').length)));
  const right = heads.map((_, column) => rows.length > 0 && rows.every((row) => isNumber(row[column] ?? '')));
  const line = (row: readonly string[]) =>
    widths
      .map((width, column) => (right[column] ? (row[column] ?? '').padStart(width) : (row[column] ?? '').padEnd(width)))
      .join('  ')
      .trimEnd();
  return [line(heads), widths.map((width) => '─'.repeat(width)).join('  '), ...rows.map(line)];
};
