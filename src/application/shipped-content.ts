import { startingCoverings } from '#shared/parameters/coverings.ts';
import { vehicles as startingVehicles } from '#shared/parameters/vehicles.ts';
import type { FirstContent } from '#application/first-content.ts';
import sample from '../../resources/sample/sample-venue.json' with { type: 'json' };

/** What a new workspace of a user holds: the starting classes, and the invented sample venue with its bookings. */
export const shippedContent: FirstContent = { coverings: startingCoverings, vehicles: startingVehicles, documents: [sample] };
