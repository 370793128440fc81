import { openApplication } from '#application/application.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import type { Answer } from '#shared/contract/failure.ts';
import { describeContract } from '#tests/contract/contract.ts';
import { webHost } from '#web-host/web-host.ts';

describeContract({
  name: 'the web host',
  keepsJobs: true,
  open: async ({ file, waitMs }) => {
    const clock = fixedClock('2027-06-01T12:00:00Z');
    const application = await openApplication({ file, waitMs, clock, log: () => undefined });
    const host = await webHost({ application, pages: new Map() });
    return {
      answer: async (name, request) => {
        const reply = await fetch(`${host.origin}/answer/${encodeURI(name)}`, {
          method: 'POST',
          headers: { authorization: `Bearer ${host.token}`, 'content-type': 'application/json' },
          body: JSON.stringify(request),
        });
        return (await reply.json()) as Answer<unknown>;
      },
      close: async () => {
        await host.close();
        await application.close();
      },
    };
  },
});
