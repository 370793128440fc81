import { useState } from 'react';
import type { Booking, IntakeQuestion } from '#shared/vocabulary/booking.ts';
import { show as inUnits } from '#shared/units/quantity.ts';
import { Part } from '../../components/fields.tsx';
import { useDesk } from '../../desk/desk.ts';
import { edit } from '../../desk/editing.ts';
import { intake, weighBlanks, type Spread } from '../../desk/intake.ts';

/** The questions of the trade; a blank is shown as what is taken for granted, with what not knowing costs. */
export const IntakeQuestions = ({ booking }: { booking: Booking }) => {
  const { units, homeId } = useDesk();
  const [spreads, setSpreads] = useState<Readonly<Partial<Record<IntakeQuestion, Spread | null>>>>({});
  const [weighing, setWeighing] = useState(false);
  const answered = intake.filter(({ question }) => booking.intake?.[question]).length;
  const answer = (question: IntakeQuestion, typed: string): void => {
    const others = Object.fromEntries(Object.entries(booking.intake ?? {}).filter(([other]) => other !== question));
    edit({ ...booking, intake: typed === '' ? others : { ...others, [question]: typed } });
  };
  const weigh = async (): Promise<void> => {
    setWeighing(true);
    setSpreads({});
    await weighBlanks(booking, (question, spread) => setSpreads((all) => ({ ...all, [question]: spread })));
    setWeighing(false);
  };
  return (
    <Part title="Intake">
      <details>
        <summary>
          {answered} of {intake.length} questions are answered; the others are assumptions
        </summary>
        <div className="row">
          <button type="button" disabled={weighing || homeId === null} onClick={() => void weigh()}>
            {weighing ? 'Weighing …' : 'What does each blank cost?'}
          </button>
          <span>Turf not ready in the usual season, with the kindest and the hardest answer.</span>
        </div>
        <table className="intake">
          <thead>
            <tr>
              <th scope="col">Question</th>
              <th scope="col">Answer</th>
              <th scope="col">While blank</th>
              <th scope="col">Spread</th>
            </tr>
          </thead>
          <tbody>
            {intake.map(({ question, words, taken, extremes }) => {
              const kept = booking.intake?.[question] ?? '';
              const spread = spreads[question];
              return (
                <tr key={question}>
                  <th scope="row">{words}</th>
                  <td>
                    <input
                      type="text"
                      aria-label={words}
                      key={kept}
                      defaultValue={kept}
                      maxLength={400}
                      onBlur={({ target }) => target.value.trim() !== kept && answer(question, target.value.trim())}
                    />
                  </td>
                  <td>{kept ? 'answered; enter it in the schedule too' : `assumed: ${taken}`}</td>
                  <td>
                    {kept
                      ? '–'
                      : extremes === null
                        ? 'not in the forecast'
                        : spread
                          ? spread.high - spread.low < 1
                            ? 'none in the usual season'
                            : `${inUnits(spread.low, 'area', units)} to ${inUnits(spread.high, 'area', units)}`
                          : spread === null
                            ? 'cannot be reckoned'
                            : '–'}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
        <p className="caution">How far an answer may lie from what is taken is our assumption.</p>
      </details>
    </Part>
  );
};
