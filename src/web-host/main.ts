import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { openOwnWorkspace } from '#application/own-workspace.ts';
import { calledFrom } from '#platform/folders/called-from.ts';
import { defaultWorkspaceFile } from '#platform/folders/workspace-file.ts';
import { builtPages } from '#platform/pages/built-pages.ts';
import { ownAddresses } from '#web-host/tablet/own-addresses.ts';
import { tabletDoor, type TabletDoor } from '#web-host/tablet/tablet-door.ts';
import { webHost, type WebHost } from '#web-host/web-host.ts';

const pagesFolder = fileURLToPath(new URL('../../out/renderer', import.meta.url));

const { values } = parseArgs({
  options: {
    /** A port of one's own choice; any free one when left out. */
    port: { type: 'string', default: '0' },
    workspace: { type: 'string' },
    /** Opens the default browser. */
    open: { type: 'boolean', default: false },
    /** The address of this machine on which tablets may come in; nobody but this machine when left out. */
    tablet: { type: 'string' },
    /** A port of one's own choice for them. */
    'tablet-port': { type: 'string', default: '0' },
  },
});

const openBrowser = (address: string): void => {
  const [command, words] =
    process.platform === 'win32'
      ? ['cmd', ['/c', 'start', '""', address.replaceAll('&', '^&')]]
      : [process.platform === 'darwin' ? 'open' : 'xdg-open', [address]];
  const browser = spawn(command as string, words as string[], { stdio: 'ignore', detached: true });
  browser.on('error', () => process.stdout.write('No browser could be opened; open the address yourself.\n'));
  browser.unref();
};

const portOf = (option: 'port' | 'tablet-port'): number => {
  const port = Number(values[option]);
  if (Number.isInteger(port) && port >= 0 && port <= 65535) return port;
  process.stderr.write(`--${option}: must be a whole number from 0 to 65535, not "${values[option]}"\n`);
  process.exit(2);
};
const port = portOf('port');
const tabletPort = portOf('tablet-port');
const { tablet } = values;
if (tablet !== undefined && !ownAddresses().includes(tablet)) {
  const own = ownAddresses().join(', ') || 'none: it is in no network';
  process.stderr.write(`--tablet: must be an address of this machine (${own}), not "${tablet}"\n`);
  process.exit(2);
}

/** Lets tablets in on one address, and says what a person needs to know to let them. */
const openForTablets = async (host: WebHost, address: string): Promise<TabletDoor> => {
  const door = await tabletDoor({
    host,
    address,
    port: tabletPort,
    now: Date.now(),
    told: (what) =>
      process.stdout.write(
        what.kind === 'came-in'
          ? `A tablet came in. Code for another: ${what.nextCode}\n`
          : 'Five wrong codes: no tablet is let in any more. Start Fieldback again to open the door.\n',
      ),
  });
  process.stdout.write(
    `Tablets on the same network: ${door.origin}\n` +
      `  code, good once: ${door.code()}\n` +
      `  SHA-256 fingerprint of its certificate: ${door.fingerprint}\n` +
      `  Nobody vouches for that certificate, so the tablet warns: go on only where it shows this fingerprint.\n`,
  );
  return door;
};

const application = await openOwnWorkspace(
  values.workspace === undefined ? defaultWorkspaceFile() : calledFrom(values.workspace),
);
if (application.trouble) process.stderr.write(`${application.trouble.message}\n`);
try {
  const host = await webHost({ application, pages: builtPages(pagesFolder), port });
  process.stdout.write(`Fieldback is at ${host.address}\nThe workspace is ${application.file}\nCtrl-C ends it.\n`);
  const door = tablet === undefined ? null : await openForTablets(host, tablet);
  if (values.open) openBrowser(host.addressForOnce());

  let closing = false;
  const close = async (): Promise<void> => {
    if (closing) process.exit(130);
    closing = true;
    await door?.close();
    await host.close();
    await application.close();
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void close());
} catch (error) {
  await application.close();
  const inUse = (error as NodeJS.ErrnoException).code === 'EADDRINUSE';
  process.stderr.write(
    inUse
      ? `Port ${(error as { port?: number }).port ?? port} is taken by another program.\n`
      : `The web host could not start: ${String(error)}\n`,
  );
  process.exit(1);
}
