import { Bar, BarChart, ReferenceLine, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import { figure, toShown, unitOf, show as inUnits, type UnitSystem } from '#shared/units/quantity.ts';
import type { ForecastAnswers, ForecastOption, Reading } from '#shared/vocabulary/answers.ts';
import { tickLook } from '../../components/chart-look.ts';
import { Part } from '../../components/fields.tsx';
import { percent } from '../../components/numbers.ts';
import { floorsOf } from '../../desk/comparing.ts';
import { useDesk } from '../../desk/desk.ts';
import { askAnswers } from '../../desk/foreseeing.ts';

const readingWords: Readonly<Record<Reading, string>> = {
  cover: 'green cover from a photograph',
  'soil-moisture': 'soil moisture',
  hardness: 'hardness',
  'crown-temperature': 'temperature at the crowns',
};

/** "+3 %", "−12 %", "no change". */
const changeWords = (share: number): string => {
  const points = Math.round(100 * share);
  return points === 0 ? 'no change' : `${points > 0 ? '+' : '−'}${Math.abs(points)} %`;
};

/** What a day, half a day of strike, a lift at night or another floor would change; and what reading would narrow the answer. */
export const WhatIf = () => {
  const { answers: all, job, booking, units, zone, coverings } = useDesk();
  if (!booking) return null;
  // Sheets, decks and dirt are classes of covering as well, but nobody would offer them as a floor.
  const floors = new Set(floorsOf(coverings).map((floor) => floor.id));
  const answers = all && {
    ...all,
    options: all.options.filter((option) => option.covering === null || floors.has(option.covering)),
  };
  return (
    <Part title="What would change it">
      {answers === null ? (
        <div className="row">
          <button type="button" disabled={job !== null} onClick={() => void askAnswers()}>
            Ask: a day more, 12 h of strike, lift at night, other floors
          </button>
          <span>Each is foreseen with the same draws, so that what differs is the option alone.</span>
        </div>
      ) : (
        <>
          <OptionChart options={answers.options} units={units} />
          <OptionTable answers={answers} units={units} />
          <ChosenZoneOptions answers={answers} zone={zone} units={units} />
          <Narrowing answers={answers} units={units} />
        </>
      )}
    </Part>
  );
};

/** The options as bars of turf more or less to replace. */
const OptionChart = ({ options, units }: { options: readonly ForecastOption[]; units: UnitSystem }) => {
  const rows = options.map((option) => ({
    name: option.name,
    area: Math.round(toShown(option.change.replaceArea, 'area', units)),
  }));
  return (
    <figure className="chart">
      <div aria-hidden>
        <ResponsiveContainer width="100%" height={24 + 20 * rows.length}>
          <BarChart data={rows} layout="vertical" accessibilityLayer={false} margin={{ top: 0, right: 12, bottom: 0, left: 4 }}>
            <XAxis type="number" tick={tickLook} stroke="currentColor" />
            <YAxis
              type="category"
              dataKey="name"
              width={210}
              interval={0}
              tick={{ fontSize: 11, fill: 'currentColor' }}
              stroke="currentColor"
            />
            <Tooltip isAnimationActive={false} cursor={{ fill: 'var(--chosen)' }} />
            <ReferenceLine x={0} stroke="var(--ink)" />
            <Bar dataKey="area" name={`turf not ready, ${unitOf('area', units)}`} fill="var(--press)" isAnimationActive={false} />
          </BarChart>
        </ResponsiveContainer>
      </div>
      <figcaption>
        Turf not ready against the booking as it is, {unitOf('area', units)}: bars to the left save turf, bars to the right cost
        it. The table beneath holds the same.
      </figcaption>
    </figure>
  );
};

const OptionTable = ({ answers, units }: { answers: ForecastAnswers; units: UnitSystem }) => (
  <div className="scroll">
    <table className="what-if">
      <caption>Against the booking as it is, the whole field with nothing done</caption>
      <thead>
        <tr>
          <th scope="col">If</th>
          <th scope="col">Turf not ready</th>
          <th scope="col">P10–P90</th>
          <th scope="col">Change</th>
          <th scope="col">Every zone ready</th>
        </tr>
      </thead>
      <tbody>
        {answers.options.map((option) => (
          <tr key={option.name}>
            <th scope="row">{option.name}</th>
            <td>{inUnits(option.replaceArea.p50, 'area', units)}</td>
            <td>
              {figure(toShown(option.replaceArea.p10, 'area', units), 0)}–
              {figure(toShown(option.replaceArea.p90, 'area', units), 0)}
            </td>
            <td>
              {option.change.replaceArea > 0 ? '+' : ''}
              {inUnits(option.change.replaceArea, 'area', units)}
            </td>
            <td>
              {percent(option.chanceAllReady)} ({changeWords(option.change.chanceReady)})
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);

const ChosenZoneOptions = ({ answers, zone, units }: { answers: ForecastAnswers; zone: string | null; units: UnitSystem }) => {
  const own = answers.zones.find((one) => one.letter === zone);
  if (!own) return null;
  const lines = answers.options.flatMap((option) => {
    const there = option.zones.find((one) => one.letter === own.letter);
    return there ? [{ name: option.name, there }] : [];
  });
  return (
    <details>
      <summary>
        The same for {own.letter} {own.name}
      </summary>
      <table>
        <thead>
          <tr>
            <th scope="col">If</th>
            <th scope="col">Chance ready</th>
            <th scope="col">Cover on the home date</th>
            <th scope="col">Not ready</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ name, there }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {there.applies ? (
                <>
                  <td>
                    {percent(there.chanceReady)} ({changeWords(there.change.chanceReady)})
                  </td>
                  <td>
                    {percent(there.coverHome.p50)} ({changeWords(there.change.coverHome)})
                  </td>
                  <td>{inUnits(there.replaceArea.p50, 'area', units)}</td>
                </>
              ) : (
                <td colSpan={3}>{there.reason}</td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
};

const Narrowing = ({ answers, units }: { answers: ForecastAnswers; units: UnitSystem }) => (
  <>
    <h4>What reading would narrow it</h4>
    {answers.narrowing.length === 0 ? (
      <p>Nothing is open: no reading would change what is answered.</p>
    ) : (
      <table>
        <caption>Taken on the day the last layer is off; the share of the spread that it would take away</caption>
        <thead>
          <tr>
            <th scope="col">Reading</th>
            <th scope="col">Zone</th>
            <th scope="col">Of ready or not</th>
            <th scope="col">Of the cover</th>
            <th scope="col">Turf that hangs on it</th>
          </tr>
        </thead>
        <tbody>
          {answers.narrowing.slice(0, 6).map((one) => (
            <tr key={`${one.zone}-${one.reading}`}>
              <th scope="row">{readingWords[one.reading]}</th>
              <td>{one.zone}</td>
              <td>{percent(one.ofReady)}</td>
              <td>{percent(one.ofCover)}</td>
              <td>{inUnits(one.weight, 'area', units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    )}
  </>
);
