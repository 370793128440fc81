import { useState } from 'react';
import { NumberField, Part, QuantityField } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { draw, takeTool, useDrafting } from '../drafting.ts';
import { lengthWords } from '../measure-words.ts';
import { changeSitePlan, scaleSitePlan, takeAwaySitePlan, takeInSitePlan } from '../site-plan.ts';

/** The promoter's site plan beneath the drawing: taken in, scaled, moved, made fainter, taken away. */
export const SitePlanPart = () => {
  const { units } = useDesk();
  const { sitePlan, tool, corners } = useDrafting();
  const [known, setKnown] = useState(20);
  const [one, other] = corners;
  const apart = one && other ? Math.hypot(one[0] - other[0], one[1] - other[1]) : null;
  return (
    <Part title="The promoter’s site plan beneath">
      <div className="row">
        <label>
          {sitePlan ? 'Another picture' : 'Picture (PNG, JPEG, WebP)'}{' '}
          <input
            type="file"
            accept="image/png,image/jpeg,image/webp"
            onChange={(event) => {
              const file = event.target.files?.[0];
              event.target.value = '';
              if (file) void takeInSitePlan(file);
            }}
          />
        </label>
        {sitePlan && (
          <button type="button" onClick={() => void takeAwaySitePlan()}>
            Take {sitePlan.name} away
          </button>
        )}
      </div>
      {sitePlan && (
        <>
          <div className="row">
            <button type="button" aria-pressed={tool === 'scale'} onClick={() => takeTool('scale')}>
              Scale it by two points
            </button>
            {tool === 'scale' && apart === null && <span>Set two points on the plan.</span>}
            {tool === 'scale' && apart !== null && (
              <>
                <label>
                  They are <QuantityField label="Known distance" value={known} quantity="length" digits={2} change={setKnown} />{' '}
                  apart, drawn {lengthWords(apart, units)}
                </label>
                <button type="button" className="main" onClick={() => void scaleSitePlan(known)}>
                  Scale it
                </button>
              </>
            )}
            <button type="button" aria-pressed={tool === 'picture'} onClick={() => takeTool('picture')}>
              Move it
            </button>
          </div>
          <div className="row">
            <label>
              Middle{' '}
              <QuantityField
                label="Site plan across"
                value={sitePlan.x}
                quantity="length"
                change={(x) => void changeSitePlan({ x })}
              />{' '}
              <QuantityField
                label="Site plan along"
                value={sitePlan.y}
                quantity="length"
                change={(y) => void changeSitePlan({ y })}
              />
            </label>
            <label>
              Wide{' '}
              <QuantityField
                label="Site plan wide"
                value={sitePlan.width * sitePlan.scale}
                quantity="length"
                change={(wide) => wide > 0 && void changeSitePlan({ scale: wide / sitePlan.width })}
              />
            </label>
            <label>
              Turned{' '}
              <NumberField
                label="Site plan turned, degrees anticlockwise"
                value={sitePlan.turned}
                low={-360}
                high={360}
                change={(turned) => void changeSitePlan({ turned })}
              />{' '}
              °
            </label>
            <label>
              Faint{' '}
              <input
                type="range"
                min={5}
                max={100}
                aria-label="How strongly the site plan shows, %"
                value={Math.round(sitePlan.opacity * 100)}
                onChange={(event) => draw({ sitePlan: { ...sitePlan, opacity: event.target.valueAsNumber / 100 } })}
                onPointerUp={() => void changeSitePlan({})}
                onKeyUp={() => void changeSitePlan({})}
              />{' '}
              strong
            </label>
          </div>
        </>
      )}
      <p className="caution">It is kept on this computer alone, beside no file of yours, and goes to nobody.</p>
    </Part>
  );
};
