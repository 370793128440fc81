import { VenueDocument } from '#shared/contract/contract.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import type { Vehicle } from '#shared/vocabulary/vehicle.ts';
import { takeIn } from '#services/venue/take-in.ts';
import type { Contents } from '#store/store.ts';

/** What a new workspace holds from the start. */
export interface FirstContent {
  readonly coverings: readonly Covering[];
  readonly vehicles: readonly Vehicle[];
  /** Venues with all that belongs to them; checked like any import. */
  readonly documents: readonly unknown[];
}

/** Fills a workspace that was just begun. Throws when the content is not what an import would take. */
export const fillNew = async (contents: Contents, content: FirstContent | undefined): Promise<void> => {
  for (const covering of content?.coverings ?? []) await contents.coverings.save(covering);
  for (const vehicle of content?.vehicles ?? []) await contents.vehicles.save(vehicle);
  for (const document of content?.documents ?? []) {
    const taken = await takeIn(contents, VenueDocument.parse(document), 'document');
    if (!taken.ok) throw new Error(`the content of a new workspace was refused: ${taken.failure.message}`);
  }
};
