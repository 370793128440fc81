import { rmSync, writeFileSync } from 'node:fs';
import { openApplication } from '#application/application.ts';
import { exitCodeOf } from '#cli/exit-code.ts';
import { runCommand } from '#cli/run-command.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import type { Answer } from '#shared/contract/failure.ts';
import { describeContract } from '#tests/contract/contract.ts';

/** Each question is a command line of its own, which opens the workspace and closes it again. */
describeContract({
  name: 'the command line',
  keepsJobs: false,
  open: ({ file, waitMs }) =>
    Promise.resolve({
      answer: async (name, request) => {
        const requestFile = `${file}.request.json`;
        writeFileSync(requestFile, JSON.stringify(request) ?? 'null');
        let [out, beside] = ['', ''];
        const code = await runCommand(['call', name, '--file', requestFile, '--workspace', file], {
          open: (workspace) =>
            openApplication({
              file: workspace!,
              waitMs,
              clock: fixedClock('2027-06-01T12:00:00Z'),
              log: () => undefined,
            }),
          out: (text) => void (out += text),
          beside: (text) => void (beside += text),
          screen: true,
          failuresAsJson: true,
        });
        rmSync(requestFile);
        if (code === 0) return { ok: true, value: JSON.parse(out) as unknown };
        const answer = JSON.parse(beside.slice(beside.indexOf('{"ok"'))) as Extract<Answer<never>, { ok: false }>;
        if (exitCodeOf[answer.failure.kind] !== code) throw new Error(`exit code ${code} for ${answer.failure.kind}`);
        return answer;
      },
      close: () => Promise.resolve(),
    }),
});
