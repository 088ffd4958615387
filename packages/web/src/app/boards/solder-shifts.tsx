import type { SolderShift } from "@pinwright/engine";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { useWords } from "../words.tsx";
import { TIME_NAMES } from "./solder-times.ts";

const WIDTH = 240;
const HEIGHT = 22;

/** How the crossing moves with the times: from shorter to longer, as figures and as bars to one scale. */
export function SolderShifts({
  shifts,
  crossing,
}: {
  readonly shifts: readonly SolderShift[];
  readonly crossing: number | null;
}) {
  const words = useWords().boards;
  const pct = (shifts[0]?.share ?? 0) * 100;
  const known = shifts.flatMap(({ shorter, longer }) => [shorter, longer]).filter((value) => value !== null);
  const most = Math.max(1, crossing ?? 0, ...known) * 1.06;
  const x = (value: number | null): number => (value === null ? WIDTH : (value / most) * WIDTH);
  const text = (value: number | null): string => (value === null ? words.never : words.crossingAt(value));
  const nameOf = ({ settings }: SolderShift): string => {
    const name = TIME_NAMES.find((one) => one === settings[0]);
    if (settings.length === 1 && name !== undefined) return words.timeNames[name];
    return words.shiftNames[settings[0]?.startsWith("hand") === true ? "hand" : "bath"];
  };
  return (
    <>
      <h3>{words.shiftsTitle}</h3>
      <p className="dim">{words.shiftsAbout(pct)}</p>
      <DrawingScroll>
        <table className="plain shifts">
          <caption className="visually-hidden">{words.shiftsTitle}</caption>
          <thead>
            <tr>
              <th scope="col">{words.time}</th>
              <th scope="col" className="end">
                {words.shorter(pct)}
              </th>
              <th scope="col" className="end">
                {words.longer(pct)}
              </th>
              <td />
            </tr>
          </thead>
          <tbody>
            {shifts.map((shift) => {
              const [a, b] = [x(shift.shorter), x(shift.longer)];
              return (
                <tr key={shift.settings.join(" ")} className={shift.settings.length > 1 ? "all" : ""}>
                  <th scope="row">{nameOf(shift)}</th>
                  <td className="end">{text(shift.shorter)}</td>
                  <td className="end">{text(shift.longer)}</td>
                  <td>
                    <svg className="shift-bar" width={WIDTH} height={HEIGHT} aria-hidden="true">
                      <path className="base" d={`M0 ${HEIGHT / 2}H${WIDTH}`} />
                      <rect
                        x={Math.min(a, b)}
                        y={5}
                        width={Math.max(Math.abs(b - a), 2)}
                        height={HEIGHT - 10}
                      />
                      {crossing !== null && <path className="now" d={`M${x(crossing)} 0V${HEIGHT}`} />}
                    </svg>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </DrawingScroll>
    </>
  );
}
