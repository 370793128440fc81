import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Booking, eventKinds } from '#shared/vocabulary/booking.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import { Venue } from '#shared/vocabulary/venue.ts';
import { openApplication, type Application } from '#application/application.ts';
import { shippedContent } from '#application/shipped-content.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import { presetBooking } from '../../src/renderer/desk/event-presets.ts';
import sample from '../../resources/sample/sample-venue.json' with { type: 'json' };

const venue = Venue.parse(sample.venue);

describe('a new booking laid out from its kind', () => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldback-presets-'));
  let application: Application;
  beforeAll(async () => {
    application = await openApplication({
      file: join(folder, 'workspace.fieldback'),
      firstContent: shippedContent,
      clock: fixedClock('2027-06-01T12:00:00Z'),
      log: () => undefined,
    });
  });
  afterAll(async () => {
    await application.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test.each(eventKinds)('%s is taken by the gate as it stands, covers turf, and can be stored', async (kind) => {
    const booking = presetBooking(kind, venue, '2027-05-29', `A ${kind}`, `new-${kind}`);
    expect(Booking.safeParse(booking).error?.issues ?? []).toEqual([]);
    const answer = await application.answer('forecast/preview', {
      venueId: venue.id,
      fixtureId: 'home-2027-10-23',
      booking,
      cellSize: 4,
    });
    expect(answer.ok ? [] : answer.failure).toEqual([]);
    const forecast = (answer as { value: Forecast }).value;
    const covered = forecast.zones.filter((zone) => zone.origin === 'event' && zone.hoursCovered > 0);
    expect(covered.length).toBe(booking.zones.length);
    const stored = await application.answer('booking/save', { booking });
    expect(stored.ok).toBe(true);
  });
});
