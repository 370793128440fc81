import type { FigureKind } from '#shared/wording/explanations.ts';
import { show } from '../desk/desk.ts';

/** A figure that opens to how it is found, what went in, and how far it can be leaned on. */
export const Figure = ({ kind, zone = null, text }: { kind: FigureKind; zone?: string | null; text: string }) => (
  <button
    type="button"
    className="figure"
    title="How is this found?"
    onClick={() => show({ figure: { kind, zone, shown: text } })}
  >
    {text}
  </button>
);
