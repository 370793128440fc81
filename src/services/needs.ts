import type { z } from 'zod';
import type { Contract, OperationName, ReplyOf } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { Job, Progress } from '#shared/contract/job.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { ForecastAnswers } from '#shared/vocabulary/answers.ts';
import type { AnswersQuestion } from '#engine/forecast/answers.ts';
import type {
  CameraNote,
  CoverMeasurement,
  FrameCorners,
  GreenThresholds,
  PhotographType,
} from '#shared/vocabulary/photograph.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import type { OutlookQuestion, RecoveryOutlook } from '#engine/forecast/recovery-outlook.ts';
import type { AssimilateQuestion, Assimilated } from '#engine/learning/assimilate.ts';
import type { LearnQuestion, Learnt } from '#engine/learning/learn-from-events.ts';
import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { DailySite } from '#engine/weather/daily-radiation.ts';
import type { DatedWeatherDay } from '#engine/weather/weather-day.ts';
import type { Optimiser } from '#planner/optimiser.ts';
import type { Typeface } from '#reports/paper.ts';
import type { Store } from '#store/store.ts';

/** Long calculations that run beside the program, by name: what each takes and gives. */
export interface Tasks {
  readonly foresee: { readonly input: ForecastQuestion; readonly output: Forecast };
  readonly answers: { readonly input: AnswersQuestion; readonly output: ForecastAnswers };
  readonly outlook: { readonly input: OutlookQuestion; readonly output: RecoveryOutlook };
  readonly assimilate: { readonly input: AssimilateQuestion; readonly output: Assimilated };
  readonly learn: { readonly input: LearnQuestion; readonly output: Learnt };
  /** A small JPEG of a photograph. */
  readonly thumbnail: { readonly input: { readonly bytes: Uint8Array }; readonly output: Uint8Array };
  readonly measure: {
    readonly input: { readonly bytes: Uint8Array; readonly thresholds: GreenThresholds; readonly frame: FrameCorners | null };
    readonly output: CoverMeasurement;
  };
}
export type TaskName = keyof Tasks;

/** What long work is given: where it says how far it is, and how it learns that nobody wants it any more. */
export interface Work {
  readonly report: (progress: Progress) => void;
  readonly signal: AbortSignal;
}

/** Runs one calculation. `urgent` ones have a worker kept for them. Rejects when it fails or is cancelled. */
export type Compute = <Name extends TaskName>(
  task: Name,
  input: Tasks[Name]['input'],
  wishes?: Partial<Work> & { readonly urgent?: boolean },
) => Promise<Tasks[Name]['output']>;

/** Long work that was accepted: the gate runs it as a job. */
export type LongWork<Value> = (work: Work) => Promise<Answer<Value>>;

/** The jobs of this program, running and lately ended. */
export interface Jobs {
  find(id: string): Job | null;
  /** Asks a job to stop and waits until it has; one that has ended stays as it is. */
  cancel(id: string): Promise<Job | null>;
}

/** What reading a weather file needs to know of the venue. */
export interface WeatherFilePlace {
  readonly site: DailySite;
  readonly values: ParameterValues;
}

/** What a weather file gave: days, or what was refused by line. Line 0 is the file as a whole. */
export interface WeatherFileReading {
  readonly ok: boolean;
  readonly days: readonly DatedWeatherDay[];
  readonly filled: readonly {
    readonly line: number;
    readonly day: string;
    readonly through: string;
    readonly quantity: string;
    readonly how: string;
  }[];
  readonly refused: readonly { readonly line: number; readonly column: string | null; readonly reason: string }[];
}

/** The bytes of photographs, by hash, untouched. */
export interface PhotographFolder {
  /** What the head of a file says of the picture, or why it is refused; nothing is decoded. */
  examine(
    bytes: Uint8Array,
  ):
    | { readonly ok: true; readonly mediaType: PhotographType; readonly width: number; readonly height: number }
    | { readonly ok: false; readonly reason: string };
  /** Time and direction that the camera noted in the file; null where it noted neither. */
  cameraNote(bytes: Uint8Array): CameraNote | null;
  /** Bytes that are there already under this hash are left alone. */
  keep(sha256: string, mediaType: PhotographType, bytes: Uint8Array): Promise<void>;
  /** Null where the file is gone. */
  read(sha256: string, mediaType: PhotographType): Promise<Uint8Array | null>;
}

/** Everything a service may reach for. Tests hand in their own. */
export interface Needs {
  readonly store: Store;
  /** Epoch ms. */
  readonly now: () => number;
  /** A new id that nothing else has. */
  readonly newId: () => string;
  readonly compute: Compute;
  readonly optimiser: Optimiser;
  /** Reads the text of a weather file; one refusal and there are no days. */
  readonly readWeather: (format: 'csv' | 'epw', text: string, place: WeatherFilePlace) => WeatherFileReading;
  /** The letters papers are printed in. */
  readonly typeface: () => Typeface;
  readonly photographs: PhotographFolder;
  readonly jobs: Jobs;
  /** Version of the program. */
  readonly version: string;
}

/** A request as the gate hands it on: checked, names trimmed. */
export type Checked<Name extends OperationName> = z.output<Contract[Name]['request']>;

/** What a service answers: a value, or for long work the work itself once everything that can be refused at once has been. */
export type Served<Name extends OperationName> = Answer<
  Contract[Name]['long'] extends true ? LongWork<ReplyOf<Name>> : ReplyOf<Name>
>;

/** One operation: the shape of the request was checked, all else is the service's to check. */
export type Service<Name extends OperationName> = (needs: Needs, request: Checked<Name>) => Served<Name> | Promise<Served<Name>>;
