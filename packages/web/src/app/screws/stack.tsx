import type { ViewEntry } from "../../worker/protocol.ts";
import { useWords } from "../words.tsx";
import { Fact } from "./fact.tsx";

type About = ViewEntry<"screwAbout">;
type Fit = NonNullable<About["fit"]>;

/** How the screw holds: what it passes through, the wood that is there, and how far its point is from the face. */
export function Stack({ about }: { readonly about: About }) {
  const words = useWords();
  const own = words.screws.stack;
  const { mm } = words.layout;
  const { fit, flangeMm, lengthMm, thicknessMm } = about;
  if (fit === null) return <p className="dim">{own.unknown}</p>;
  return (
    <div className="group">
      <h4>{own.title}</h4>
      <StackDrawing about={about} fit={fit} />
      <dl className="facts">
        <Fact name={own.length}>{mm(lengthMm)}</Fact>
        <Fact name={own.flange}>{mm(flangeMm)}</Fact>
        {fit.recessMm > 0 && <Fact name={own.recess}>{mm(fit.recessMm)}</Fact>}
        <Fact name={own.wood}>{own.woodOf(fit.woodMm, thicknessMm)}</Fact>
        <Fact name={own.engaged}>
          <span className={fit.engagedMm < fit.leastEngagedMm ? "error-text" : ""}>
            {own.engagedOf(fit.engagedMm, fit.leastEngagedMm, own.holdsIn[fit.holdsIn])}
          </span>
        </Fact>
        <Fact name={own.margin}>
          {fit.leftMm === null ? (
            own.goesThrough
          ) : (
            <span className={fit.leftMm < 0 ? "error-text" : ""}>
              {fit.leftMm < 0 ? own.comesOut(-fit.leftMm) : mm(fit.leftMm)}
            </span>
          )}
        </Fact>
        <Fact name={own.hole}>
          {fit.hole === null
            ? own.noHole
            : own.holeOf(fit.hole.kind, fit.hole.diameterMm, fit.hole.depthMm, fit.hole.allowedMm)}
        </Fact>
      </dl>
    </div>
  );
}

const WIDTH = 220;
const HEIGHT = 96;
/** Heights are drawn at this most, so that a short screw is not a giant. */
const MOST_PX_A_MM = 5;

/** The screw in the wood, to scale: head up, as it is driven. */
function StackDrawing({ about, fit }: { readonly about: About; readonly fit: Fit }) {
  const words = useWords().screws.stack;
  const { flangeMm, lengthMm } = about;
  const deepest = Math.max(fit.woodMm, lengthMm - flangeMm);
  const k = Math.min(MOST_PX_A_MM, (HEIGHT - 20) / Math.max(flangeMm + deepest, 1));
  const head = 10;
  const face = head + flangeMm * k;
  const point = head + lengthMm * k;
  const [left, middle] = [20, WIDTH / 2];
  return (
    <svg
      className="stack-drawing"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={words.drawing(lengthMm, flangeMm, fit.woodMm)}
    >
      <rect className="wood" x={left} y={face} width={WIDTH - 2 * left} height={fit.woodMm * k} />
      {flangeMm > 0 && (
        <rect className="flange" x={left + 30} y={head} width={WIDTH - 2 * left - 60} height={flangeMm * k} />
      )}
      <path
        className={fit.leftMm !== null && fit.leftMm < 0 ? "shank out" : "shank"}
        d={`M${middle - 12} ${head - 6}h24l-6 6h-3V${Math.max(point - 8, head)}L${middle} ${point}L${middle - 3} ${Math.max(point - 8, head)}V${head}h-3z`}
      />
    </svg>
  );
}
