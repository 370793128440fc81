import type Database from 'better-sqlite3';

/** What is broken or half there in a workspace whose venues `venue-…` only the writers of these tests wrote; empty when nothing is. */
export const whole = (database: Database.Database): readonly string[] => {
  const damage = (database.pragma('integrity_check') as { integrity_check: string }[]).map((row) => row.integrity_check);
  const orphans = database.pragma('foreign_key_check') as unknown[];
  const halves = database
    .prepare(
      `select id from venues where id like 'venue-%' and ((select count(*) from bookings where venue_id = venues.id) <> 2
         or (select count(*) from fixtures where venue_id = venues.id) <> 1)`,
    )
    .pluck()
    .all() as string[];
  return [
    ...damage.filter((line) => line !== 'ok'),
    ...orphans.map((orphan) => `points to nothing: ${JSON.stringify(orphan)}`),
    ...halves.map((id) => `${id} is half there`),
  ];
};
