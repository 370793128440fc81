/**
 * `npm run package`: builds, writes the notices, and lays out the directory that a package for this machine unpacks to, from the same
 * settings that electron-builder reads: `dist/unpacked`, or the folder given. With Electron's runtime beside it, it starts as it is.
 */
import { cpSync, existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { appFiles, buildSettings, isUnpacked, type PackagePlatform } from '#packaging/app-files.ts';
import { noticesText } from '#packaging/notices.ts';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[/\\]$/, '');
const platform: PackagePlatform = process.platform === 'win32' ? 'win' : process.platform === 'darwin' ? 'mac' : 'linux';
const [given] = process.argv.slice(2);
const target = given === undefined ? join(root, 'dist', 'unpacked') : resolve(process.env['INIT_CWD'] ?? root, given);
const say = (line: string): void => void process.stdout.write(`${line}\n`);

if (existsSync(target) && !existsSync(join(target, 'resources', 'app'))) {
  say(`${target} is there and was not laid out by this command; name another folder.`);
  process.exit(2);
}
const { status } = spawnSync(process.execPath, [join(root, 'src', 'bootstrap', 'build.js')], { cwd: root, stdio: 'inherit' });
if (status !== 0) process.exit(1);
writeFileSync(join(root, 'out', 'notices.txt'), noticesText(root));

rmSync(target, { recursive: true, force: true });
const app = join(target, 'resources', 'app');
const runtime = join(root, 'node_modules', 'electron', 'dist');
if (existsSync(runtime)) cpSync(runtime, target, { recursive: true, verbatimSymlinks: true });

const files = appFiles(root, platform);
for (const file of files) {
  mkdirSync(dirname(join(app, file)), { recursive: true });
  cpSync(join(root, file), join(app, file));
}
cpSync(join(root, 'out', 'notices.txt'), join(target, 'NOTICES.txt'));
const settings = buildSettings(root);
say(`${files.length} files in ${target}, ${files.filter((file) => isUnpacked(settings, file)).length} of them native code`);
if (!existsSync(runtime)) say('Electron’s runtime is not on this machine: the directory holds the application without it.');
