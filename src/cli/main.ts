import { runCommand } from '#cli/run-command.ts';
import { calledFrom } from '#platform/folders/called-from.ts';
import { defaultWorkspaceFile } from '#platform/folders/workspace-file.ts';

// A reader that ends early (`| head`) is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));

process.exitCode = await runCommand(process.argv.slice(2), {
  open: async (workspace) => {
    // Only now: help and a misspelt option need no database.
    const { openOwnWorkspace } = await import('#application/own-workspace.ts');
    return openOwnWorkspace(workspace === undefined ? defaultWorkspaceFile() : calledFrom(workspace));
  },
  out: (text) => void process.stdout.write(text),
  beside: (text) => void process.stderr.write(text),
  screen: process.stderr.isTTY === true,
});
