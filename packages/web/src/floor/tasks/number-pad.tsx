import { Fragment } from "react";
import { useWords } from "../../app/words.tsx";

const ROWS = [
  ["7", "8", "9"],
  ["4", "5", "6"],
  ["1", "2", "3"],
] as const;
const MOST = 9;

/** A number that is tapped in; `text` is what stands there so far. */
export function NumberPad({
  text,
  setText,
}: {
  readonly text: string;
  readonly setText: (text: string) => void;
}) {
  const own = useWords().floor.test;
  const add = (sign: string): void => {
    if (text.length < MOST) setText(text === "0" && sign !== "." ? sign : text + sign);
  };
  const signs = [
    <button key="erase" type="button" aria-label={own.erase} onClick={() => setText(text.slice(0, -1))}>
      ⌫
    </button>,
    <button
      key="sign"
      type="button"
      aria-label={own.sign}
      onClick={() => setText(text.startsWith("-") ? text.slice(1) : `-${text}`)}
    >
      ±
    </button>,
    <button
      key="point"
      type="button"
      aria-label={own.point}
      disabled={text.includes(".")}
      onClick={() => add(text === "" || text === "-" ? "0." : ".")}
    >
      .
    </button>,
  ];
  return (
    <div className="floor-digits floor-number-pad">
      {ROWS.map((digits, i) => (
        <Fragment key={digits[0]}>
          {digits.map((digit) => (
            <button key={digit} type="button" onClick={() => add(digit)}>
              {digit}
            </button>
          ))}
          {signs[i]}
        </Fragment>
      ))}
      <button type="button" className="floor-nought" onClick={() => add("0")}>
        0
      </button>
    </div>
  );
}

/** The number of a text that was tapped in; null when it is none yet. */
export function tapped(text: string): number | null {
  const value = Number(text);
  return text === "" || text === "-" || !Number.isFinite(value) ? null : value;
}
