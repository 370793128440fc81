import { useEffect, useRef } from 'react';
import { readPicture, useEvidence } from '../../desk/evidence.ts';
import { momentWords } from '../../desk/moments.ts';

/** A photograph made small; read only once it comes into sight, so that hundreds of them open at once. */
export const SmallPicture = ({ id }: { id: string }) => {
  const { pictures, photographs } = useEvidence();
  const frame = useRef<HTMLElement>(null);
  useEffect(() => {
    if (!frame.current) return;
    const watch = new IntersectionObserver((seen) => {
      if (!seen.some((one) => one.isIntersecting)) return;
      watch.disconnect();
      void readPicture(id);
    });
    watch.observe(frame.current);
    return () => watch.disconnect();
  }, [id]);
  const photograph = photographs.find((one) => one.id === id);
  const words = photograph
    ? [
        photograph.zone,
        photograph.point,
        momentWords(photograph.takenAt),
        photograph.bearing === null ? '' : `${Math.round(photograph.bearing)}°`,
        photograph.words,
      ]
        .filter(Boolean)
        .join(', ')
    : id;
  const address = pictures.get(id);
  return (
    <figure ref={frame} className="small-picture">
      {address ? <img src={address} alt={words} /> : <div className="no-picture">…</div>}
      <figcaption>{words}</figcaption>
    </figure>
  );
};
