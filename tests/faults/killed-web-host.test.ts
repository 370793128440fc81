import { describeKills } from '#tests/faults/kill-rounds.ts';

describeKills('web host', 12, ['write', 'import', 'migration', 'backup', 'draft']);
