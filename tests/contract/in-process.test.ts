import { openApplication } from '#application/application.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import { describeContract } from '#tests/contract/contract.ts';

describeContract({
  name: 'the application itself',
  keepsJobs: true,
  open: ({ file, waitMs }) => openApplication({ file, waitMs, clock: fixedClock('2027-06-01T12:00:00Z'), log: () => undefined }),
});
