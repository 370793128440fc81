import type { CoverMeasurement, FrameCorners, GreenThresholds } from '#shared/vocabulary/photograph.ts';
import { coverLimits } from '#engine/colour/cover-limits.ts';
import { coverPreview } from '#engine/colour/cover-preview.ts';
import { greenBands } from '#engine/colour/green-pixels.ts';
import { countCover } from '#engine/colour/photograph-cover.ts';
import { sharpnessOf } from '#engine/colour/sharpness.ts';
import { decodePhotograph, pngOf } from '#platform/photographs/codecs.ts';

/** Pixels on the longer side of the preview. */
const previewSide = 800;

export interface MeasureQuestion {
  readonly bytes: Uint8Array;
  readonly thresholds: GreenThresholds;
  readonly frame: FrameCorners | null;
}

/**
 * Green cover of a photograph with its limits and a preview of what was counted.
 * @throws RangeError with field `base64` or `frame`
 */
export const measurePhotograph = async ({ bytes, thresholds, frame }: MeasureQuestion): Promise<CoverMeasurement> => {
  const picture = await decodePhotograph(bytes);
  const band = typeof thresholds === 'string' ? greenBands[thresholds] : thresholds;
  const other = greenBands[thresholds === 'first' ? 'later' : 'first'];
  const counted = countCover(picture, band, other, frame);
  const sharpness = sharpnessOf(picture, frame);
  const preview = await pngOf(coverPreview(picture, band, frame, previewSide));
  return {
    width: picture.width,
    height: picture.height,
    ...counted,
    sharpness,
    limits: coverLimits(counted, sharpness, frame !== null),
    preview: { mediaType: 'image/png', base64: Buffer.from(preview).toString('base64') },
  };
};
