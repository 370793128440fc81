import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { openOwnWorkspace } from '#application/own-workspace.ts';
import { calledFrom } from '#platform/folders/called-from.ts';
import { defaultWorkspaceFile } from '#platform/folders/workspace-file.ts';
import { builtPages } from '#platform/pages/built-pages.ts';
import { webHost } from '#web-host/web-host.ts';

const pagesFolder = fileURLToPath(new URL('../../out/renderer', import.meta.url));

const { values } = parseArgs({
  options: {
    /** A port of one's own choice; any free one when left out. */
    port: { type: 'string', default: '0' },
    workspace: { type: 'string' },
    /** Opens the default browser. */
    open: { type: 'boolean', default: false },
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

const port = Number(values.port);
if (!Number.isInteger(port) || port < 0 || port > 65535) {
  process.stderr.write(`--port: must be a whole number from 0 to 65535, not "${values.port}"\n`);
  process.exit(2);
}
const application = await openOwnWorkspace(
  values.workspace === undefined ? defaultWorkspaceFile() : calledFrom(values.workspace),
);
if (application.trouble) process.stderr.write(`${application.trouble.message}\n`);
try {
  const host = await webHost({ application, pages: builtPages(pagesFolder), port });
  process.stdout.write(`Fieldback is at ${host.address}\nThe workspace is ${application.file}\nCtrl-C ends it.\n`);
  if (values.open) openBrowser(host.address);

  let closing = false;
  const close = async (): Promise<void> => {
    if (closing) process.exit(130);
    closing = true;
    await host.close();
    await application.close();
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void close());
} catch (error) {
  await application.close();
  const inUse = (error as NodeJS.ErrnoException).code === 'EADDRINUSE';
  process.stderr.write(
    inUse ? `Port ${port} is taken by another program.\n` : `The web host could not start: ${String(error)}\n`,
  );
  process.exit(1);
}
