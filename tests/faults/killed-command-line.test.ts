import { describeKills } from '#tests/faults/kill-rounds.ts';

describeKills('command line', 11, ['write', 'backup']);
