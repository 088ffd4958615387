import type { Wanted } from "@pinwright/contract";
import { isWithin } from "@pinwright/engine";
import { IconAlertTriangle, IconCheck, IconGauge, IconX } from "@tabler/icons-react";
import { type ReactNode, useState } from "react";
import { useWords } from "../../app/words.tsx";
import { NumberPad, tapped } from "../tasks/number-pad.tsx";
import { TaskFoot } from "../tasks/task-foot.tsx";
import { type Measured, type Reader, type Source, TYPED, useReader } from "./use-reader.ts";

/** Digits of a reading that stand on the screen; the fact has all of them. */
const SHOWN = 6;
const shown = (value: number): string => String(Number(value.toPrecision(SHOWN)));

/** A value that is read from an instrument or typed, held against the limits of the design. */
export function MeasureScreen({
  of,
  wanted,
  told,
  aside,
  take,
}: {
  readonly of: Measured;
  readonly wanted: Wanted;
  /** What to do. */
  readonly told: ReactNode;
  /** Goes to the left of what ends the screen. */
  readonly aside?: ReactNode;
  readonly take: (good: boolean, value: number, source: Source) => void;
}) {
  const own = useWords().floor.test;
  const reader = useReader(of, wanted);
  const [text, setText] = useState("");
  const [read, setRead] = useState<{ readonly value: number; readonly source: Source } | null>(null);
  const [out, setOut] = useState(false);
  const value = read?.value ?? tapped(text);
  const source = read?.source ?? TYPED;
  const good = value !== null && isWithin(wanted, { value, good: true });
  const limits = own.limits(wanted.min, wanted.max, wanted.unit);
  const clear = (): void => {
    setText("");
    setRead(null);
    setOut(false);
  };
  if (out && value !== null)
    return (
      <OutOfLimits says={own.outSays(value, wanted.unit, limits)} again={clear}>
        <button type="button" className="floor-bad-plain" onClick={() => take(false, value, source)}>
          <IconX size={30} aria-hidden /> {own.recordBad}
        </button>
      </OutOfLimits>
    );
  return (
    <>
      <div className="floor-body floor-split floor-measure">
        <section>
          {told}
          {wanted.min !== null || wanted.max !== null ? (
            <p className="floor-limits">
              <b>{limits}</b>
              {wanted.nominal !== null && <small>{own.nominal(wanted.nominal, wanted.unit)}</small>}
            </p>
          ) : (
            <p className="amber-text">{own.noLimits}</p>
          )}
        </section>
        <section>
          <output
            className="floor-figure"
            aria-label={own.value}
            data-out={value !== null && !good ? "" : undefined}
          >
            {value === null ? text || "–" : read === null ? text : shown(value)} <small>{wanted.unit}</small>
          </output>
          <p role="status" className={value === null || good ? "dim" : "error-text"}>
            {value === null ? " " : good ? own.within : own.out}
            <From reader={reader} source={value === null ? null : source} />
          </p>
          <Instruments reader={reader} read={setRead} clear={clear} readBy={source.instrument} />
          <NumberPad
            text={text}
            setText={(next) => {
              setRead(null);
              setText(next);
            }}
          />
        </section>
      </div>
      <TaskFoot>
        {aside}
        <button
          type="button"
          className="floor-main"
          disabled={value === null || reader.busy !== null}
          onClick={() => {
            if (value === null) return;
            if (good) take(true, value, source);
            else setOut(true);
          }}
        >
          <IconCheck size={30} aria-hidden /> {own.take}
        </button>
      </TaskFoot>
    </>
  );
}

function From({ reader, source }: { readonly reader: Reader; readonly source: Source | null }) {
  const own = useWords().floorMeasure.read;
  const instrument = reader.offered.find(({ id }) => id === source?.instrument);
  if (source === null) return null;
  return <small> · {instrument === undefined ? own.typed : own.from(reader.nameOf(instrument))}</small>;
}

/** A button for each instrument that measures this, and what it had to say. */
function Instruments({
  reader,
  read,
  clear,
  readBy,
}: {
  readonly reader: Reader;
  readonly read: (found: { readonly value: number; readonly source: Source }) => void;
  /** Takes away what stands there: a value that was read before is not the one that is read now. */
  readonly clear: () => void;
  /** The one that gave the value that stands there. */
  readonly readBy: string;
}) {
  const own = useWords().floorMeasure.read;
  const { offered, nameOf, busy, trouble, warning } = reader;
  return (
    <div className="floor-instruments">
      {offered.map((one) => (
        <button
          key={one.id}
          type="button"
          className="floor-read"
          disabled={busy !== null}
          onClick={() => {
            clear();
            void reader.read(one).then((found) => found !== null && read(found));
          }}
        >
          <IconGauge size={28} aria-hidden />
          {busy === one.id
            ? own.reading(nameOf(one))
            : readBy === one.id
              ? own.again(nameOf(one))
              : own.button(nameOf(one))}
        </button>
      ))}
      {trouble.length > 0 && (
        <div role="alert">
          {trouble.map((line) => (
            <p key={line} className="error-text">
              {line}
            </p>
          ))}
          <p>{own.instead}</p>
        </div>
      )}
      {warning !== "" && (
        <p role="alert" className="amber-text">
          {warning}
        </p>
      )}
      {trouble.length === 0 && offered.length > 0 && <p className="dim">{own.orType}</p>}
    </div>
  );
}

function OutOfLimits({
  says,
  again,
  children,
}: {
  readonly says: string;
  readonly again: () => void;
  readonly children: ReactNode;
}) {
  const own = useWords().floor.test;
  return (
    <>
      <div className="floor-body floor-out" role="alert">
        <h1>
          <IconAlertTriangle size={48} aria-hidden /> {own.out}
        </h1>
        <p className="floor-figure">{says}</p>
        <p>{own.outDo}</p>
      </div>
      <TaskFoot>
        {children}
        <button type="button" className="floor-main" onClick={again}>
          {own.again}
        </button>
      </TaskFoot>
    </>
  );
}
