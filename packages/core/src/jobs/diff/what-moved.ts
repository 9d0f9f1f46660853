import { USELESS_SWR } from "../../bands/dip.js";
import { reflectionAt } from "../../curve/curve.js";
import {
  type CurvePoint,
  extremesBetween,
  type LimitSpan,
  spanAt,
  spansWithin,
  type Trace,
  traceOf,
} from "../../curve/trace.js";
import { impedanceFromReflection } from "../../reflection/impedance.js";
import { reflectionMagnitudeFromSwr, swrFromReflectionMagnitude } from "../../reflection/swr.js";
import type { CurvePiece, SideCurve } from "./side-curve.js";

/** What of a dip is compared, as the place of measurement sees it. */
interface Dip {
  readonly point: CurvePoint;
  readonly resistanceOhms: number | null;
  /** Width at an SWR of 2, Hz; null where the dip does not reach that or its span is open */
  readonly widthHz: number | null;
}

const LIMIT = 1 / 3;
/** A dip further away than this is another one. */
const GREATEST_MOVE = 0.15;

/** How the deepest dip of the first sweep moved and changed, as numbers and as a sentence; nothing where it has no dip. */
export function whatMoved(before: SideCurve, after: SideCurve): { evidence: Record<string, number>; text: string } {
  const moves = before.pieces.flatMap((first) => after.pieces.flatMap((second) => moveBetween(first, second) ?? []));
  if (moves.length === 0) return { evidence: {}, text: "" };
  const { was, is } = moves.reduce((a, b) =>
    b.was.point.reflectionMagnitude < a.was.point.reflectionMagnitude ? b : a,
  );
  const around = was.point.frequencyHz;
  const evidence: Record<string, number> = {
    dipHzBefore: around,
    dipHzAfter: is.point.frequencyHz,
    ...named("resistanceOhms", was.resistanceOhms, is.resistanceOhms),
    ...named("widthHz", was.widthHz, is.widthHz),
  };
  return { evidence, text: ` ${sentence(was, is)}` };
}

/** The deepest dip of the first of two curves, and what became of it in the second; null where one of them has none. */
function moveBetween(first: CurvePiece, second: CurvePiece): { was: Dip; is: Dip } | null {
  const low = Math.max(first.lowHz, second.lowHz);
  const high = Math.min(first.highHz, second.highHz);
  const was = low < high ? dipBetween(traceOf(first.curve), low, high) : null;
  if (was === null) return null;
  const around = was.point.frequencyHz;
  const from = Math.max(low, around * (1 - GREATEST_MOVE));
  const is = dipBetween(traceOf(second.curve), from, Math.min(high, around * (1 + GREATEST_MOVE)));
  return is && { was, is };
}

function sentence(was: Dip, is: Dip): string {
  const place = ({ point }: Dip) =>
    `${(point.frequencyHz / 1e6).toFixed(3)} MHz (SWR ${swrFromReflectionMagnitude(point.reflectionMagnitude).toFixed(2)})`;
  const parts = [
    `the deepest dip went from ${place(was)} to ${place(is)}`,
    ...(was.widthHz !== null && is.widthHz !== null
      ? [`its width at 2:1 from ${Math.round(was.widthHz / 1000)} to ${Math.round(is.widthHz / 1000)} kHz`]
      : []),
    ...(was.resistanceOhms !== null && is.resistanceOhms !== null
      ? [`the resistance there from ${was.resistanceOhms.toFixed(0)} to ${is.resistanceOhms.toFixed(0)} Ω`]
      : []),
  ];
  return `As seen here, ${parts.join(", ")}.`;
}

const named = (name: string, before: number | null, after: number | null): Record<string, number> =>
  before === null || after === null ? {} : { [`${name}Before`]: before, [`${name}After`]: after };

/** The deepest dip between two frequencies; null where the least lies at an end. */
function dipBetween(trace: Trace, lowHz: number, highHz: number): Dip | null {
  const point = extremesBetween(trace, lowHz, highHz)?.best;
  if (point === undefined || point.frequencyHz === lowHz || point.frequencyHz === highHz) return null;
  if (point.reflectionMagnitude > reflectionMagnitudeFromSwr(USELESS_SWR)) return null;
  const reflection = reflectionAt(trace.curve, point.frequencyHz);
  const span = spanAt(spansWithin(trace, LIMIT), point.frequencyHz);
  return {
    point,
    resistanceOhms: reflection && impedanceFromReflection(reflection, trace.curve.sweep.referenceOhms).real,
    widthHz: span === undefined || isOpen(span) ? null : span.highHz - span.lowHz,
  };
}

const isOpen = ({ openLow, openHigh }: LimitSpan) => openLow || openHigh;
