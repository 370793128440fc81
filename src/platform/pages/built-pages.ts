import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';

/** One built file of the pages, ready to be handed out. */
export interface BuiltPage {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly mediaType: string;
  /** Whether its name changes with its content, so that it may be kept for ever. */
  readonly lasting: boolean;
}

const mediaTypes: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webp': 'image/webp',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
};

/**
 * All built pages by their address path (`/index.html`, `/assets/…`), read once. What is not in this list is not handed out:
 * no path a request names ever touches the disk. Empty where nothing is built.
 */
export const builtPages = (folder: string): ReadonlyMap<string, BuiltPage> => {
  const pages = new Map<string, BuiltPage>();
  if (!existsSync(folder)) return pages;
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const mediaType = mediaTypes[extname(entry.name)];
    if (!entry.isFile() || mediaType === undefined) continue;
    const file = join(entry.parentPath, entry.name);
    const path = `/${relative(folder, file).split(sep).join('/')}`;
    pages.set(path, { bytes: new Uint8Array(readFileSync(file)), mediaType, lasting: path.startsWith('/assets/') });
  }
  return pages;
};

/** What a page may load and do: only what comes from where it came from itself; pictures and files it made itself. */
export const contentPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self' data:",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Headers of every answer that carries a page. */
export const pageHeaders = (page: BuiltPage): Readonly<Record<string, string>> => ({
  'content-type': page.mediaType,
  'content-security-policy': contentPolicy,
  'cache-control': page.lasting ? 'private, max-age=31536000, immutable' : 'no-store',
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), payment=(), usb=()',
});
