import { memo, useSyncExternalStore } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import type { Entries } from "../book/desk-client.ts";
import type { CameraRig } from "../layout/camera-rig.ts";
import { scaleOfStep } from "../layout/geometry/camera.ts";
import type { ShownMarks } from "./shown.ts";

type Mark = ViewEntry<"screwMarks">;

/** Width of a sign's drawing, mm: larger ones are scaled from it. */
const DESIGN_MM = 4;
/** Usual width of a sign of the step on the screen. */
export const USUAL_SIGN_PX = 18;
const BEFORE_PX = 11;

/** Signs of screws at their holes. From afar they are larger than they print, so that they can be told apart. */
export const ScrewSigns = memo(function ScrewSigns({
  rig,
  marks,
  types,
  mirrored,
  pickedId,
  signPx,
}: {
  readonly rig: CameraRig;
  readonly marks: ShownMarks;
  readonly types: Entries<"screwTypes">;
  readonly mirrored: boolean;
  readonly pickedId: string | null;
  /** What a sign of the step has to have on the screen to be told from others. */
  readonly signPx: number;
}) {
  const scale = scaleOfStep(useSyncExternalStore(rig.step.subscribe, rig.step.get));
  const px = Math.min(1, Math.max(0.6, Math.sqrt(scale))) / scale;
  const usualMm = Math.max(DESIGN_MM, Math.min(signPx, USUAL_SIGN_PX) * px);
  // Larger than usual only as far as signs beside each other let it.
  const nowMm = Math.max(usualMm, Math.min(signPx * px, leastGapMm(marks.now)));
  const beforeMm = Math.max(DESIGN_MM * 0.6, BEFORE_PX * px);
  const shape = (mark: Mark, className: string, sizeMm: number) => (
    <SignAt
      key={mark.id}
      mark={mark}
      sign={types.get(mark.typeId)?.sign ?? null}
      className={mark.id === pickedId ? `${className} picked` : className}
      sizeMm={sizeMm}
      mirrored={mirrored}
    />
  );
  const sought = new Set(marks.sought.map(({ id }) => id));
  const dimmed = sought.size > 0;
  const others = (list: readonly Mark[]): readonly Mark[] => list.filter((mark) => !sought.has(mark.id));
  return (
    <>
      {!dimmed && marks.now.length > 1 && <Walk marks={marks.now} />}
      <g className="names signs">
        {others(marks.before).map((mark) => shape(mark, "before", beforeMm))}
        {others(marks.now).map((mark) => shape(mark, dimmed ? "before" : "now", nowMm))}
        {marks.sought.map((mark) => shape(mark, "sought", nowMm))}
        {(dimmed ? marks.sought : marks.now).map((mark) => (
          <text
            key={mark.id}
            x={(mirrored ? -mark.xMm : mark.xMm) + nowMm * 0.62}
            y={-mark.yMm}
            style={{ fontSize: nowMm * 0.8 }}
          >
            {types.get(mark.typeId)?.sign?.letter}
          </text>
        ))}
      </g>
    </>
  );
});

/** Least distance between two of the marks; a step has few. */
function leastGapMm(marks: readonly Mark[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, a] of marks.entries())
    for (const b of marks.slice(i + 1)) least = Math.min(least, Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm));
  return least;
}

/** The way of the hand from hole to hole. */
const Walk = memo(function Walk({ marks }: { readonly marks: readonly Mark[] }) {
  return <path className="walk" d={`M${marks.map(({ xMm, yMm }) => `${xMm} ${yMm}`).join("L")}`} />;
});

/** In a group that is turned over as a whole: a sign is never mirrored, whatever side is looked at. */
const SignAt = memo(function SignAt({
  mark,
  sign,
  className,
  sizeMm,
  mirrored,
}: {
  readonly mark: Mark;
  readonly sign: ViewEntry<"screwTypes">["sign"];
  readonly className: string;
  readonly sizeMm: number;
  readonly mirrored: boolean;
}) {
  const [x, y] = [mirrored ? -mark.xMm : mark.xMm, -mark.yMm];
  const k = sizeMm / DESIGN_MM;
  return (
    <g className={`sign ${className}`} data-screw={mark.id}>
      <circle className="sign-ground" cx={x} cy={y} r={sizeMm * 0.62} />
      {sign === null ? (
        <circle className="sign-none" cx={x} cy={y} r={sizeMm / 3} />
      ) : (
        <path d={sign.d} transform={`translate(${x} ${y}) scale(${k} ${-k})`} />
      )}
    </g>
  );
});
