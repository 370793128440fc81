import { useEffect, useState } from 'react';
import type { SitePlan } from './site-plan-store.ts';

/** The promoter's site plan, laid over the turf and beneath every line that is drawn. */
export const PictureBeneath = ({ plan }: { plan: SitePlan }) => {
  const { picture, width, height, x, y, scale, turned, opacity } = plan;
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(picture);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [picture]);
  if (address === null) return null;
  return (
    <image
      className="site-plan"
      href={address}
      x={-width / 2}
      y={-height / 2}
      width={width}
      height={height}
      opacity={opacity}
      preserveAspectRatio="none"
      transform={`translate(${x} ${-y}) rotate(${-turned}) scale(${scale})`}
    />
  );
};
