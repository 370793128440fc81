/**
 * Whether a text can be a weather file at all, before anything is parsed. Nothing here reads a disk: the caller hands in bytes or
 * text.
 */

/** Largest file taken in, bytes: fifty years of hours fit, a whole archive does not. */
export const largestFile = 50_000_000;

const megabytes = (bytes: number): string => `${Math.round(bytes / 1e6)} MB`;

/** Why a file of this size is refused, or null. */
export const sizeProblem = (byteLength: number): string | null =>
  byteLength > largestFile ? `the file has ${megabytes(byteLength)}; at most ${megabytes(largestFile)} are taken in` : null;

const utf16 = 'the file is UTF-16 text; save it as UTF-8 and import it again';

/** Why a decoded text is refused, or null. UTF-16 read as UTF-8 shows by its mark or by the zero bytes between the letters. */
export const textProblem = (text: string, byteLength = text.length): string | null => {
  const size = sizeProblem(byteLength);
  if (size !== null) return size;
  const head = text.slice(0, 4096);
  if (/^(?:\uFFFD\uFFFD|\u00FF\u00FE|\u00FE\u00FF|\uFFFE)/.test(head)) return utf16;
  if (/^PK\u0003\u0004/.test(head)) return 'the file is a packed archive or a spreadsheet; export it as CSV text';
  if (head.includes('\u0000')) return /^\uFEFF?(?:\u0000[^\u0000]|[^\u0000]\u0000)/.test(head) ? utf16 : 'the file is not text';
  if (text.replace(/^\uFEFF/, '').trim() === '') return 'the file is empty';
  return null;
};

/** The text of a file's bytes, or why there is none. A UTF-8 mark at the start is dropped. */
export const textOf = (bytes: Uint8Array): { readonly text: string } | { readonly problem: string } => {
  const size = sizeProblem(bytes.length);
  if (size !== null) return { problem: size };
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) return { problem: utf16 };
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // Older exports of weather services are in the Western one-byte encoding; their figures read the same.
    text = new TextDecoder('windows-1252').decode(bytes);
  }
  const problem = textProblem(text, bytes.length);
  return problem === null ? { text } : { problem };
};
