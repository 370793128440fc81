import { describeKills } from '#tests/faults/kill-rounds.ts';

describeKills('desktop', 13, ['import', 'migration']);
