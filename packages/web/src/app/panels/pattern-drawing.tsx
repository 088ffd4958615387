import type { SheetCut } from "@pinwright/engine";
import { useEffect, useRef } from "react";
import type { Entries } from "../book/desk-client.ts";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { usePick, useWords } from "../words.tsx";
import { type DoneState, doneStates, type SheetScale, sheetScale } from "./cut-rows.ts";

/** Room that a character takes at the size of a label, px; Chinese takes twice as much. */
const CHARACTER_PX = 6.6;
const LINE_PX = 15;
const EDGE = 1;
/** On a narrow screen it is drawn smaller, as long as it can be read; then it is pushed sideways. */
const MOST_SHRUNK = 0.64;

const widthOf = (text: string): number =>
  [...text].reduce((sum, letter) => sum + (letter.charCodeAt(0) > 0x2e7f ? 2 : 1), 0) * CHARACTER_PX;

/** How one sheet is cut: panels, what is kept, and the cut that is looked at. */
export function PatternDrawing({
  sheet,
  index,
  longestMm,
  shown,
  grain,
  sizes,
}: {
  readonly sheet: SheetCut;
  /** Number of the pattern, from 1. */
  readonly index: number;
  readonly longestMm: number;
  /** Numbers of the cuts that are looked at. */
  readonly shown: ReadonlySet<number>;
  /** Whether the sheet has a face grain, along its length. */
  readonly grain: boolean;
  readonly sizes: Entries<"panelSizes">;
}) {
  const words = useWords().panels;
  const scale = sheetScale(sheet, longestMm);
  const states = doneStates(sheet, shown);
  const svg = useRef<SVGSVGElement>(null);
  const sought = [...shown].join(" ");
  // biome-ignore lint/correctness/useExhaustiveDependencies: another cut is brought into sight
  useEffect(() => {
    const cut = svg.current?.querySelector(".this-cut");
    const frame = svg.current?.closest(".drawing-scroll");
    if (cut == null || frame == null) return;
    const [at, seen] = [cut.getBoundingClientRect(), frame.getBoundingClientRect()];
    frame.scrollLeft += (at.left + at.right) / 2 - (seen.left + seen.right) / 2;
  }, [sought, sheet]);
  return (
    <DrawingScroll>
      <svg
        ref={svg}
        className="pattern"
        viewBox={`${-EDGE} ${-EDGE} ${scale.widthPx + 2 * EDGE} ${scale.heightPx + 2 * EDGE}`}
        width={scale.widthPx + 2 * EDGE}
        height={scale.heightPx + 2 * EDGE}
        style={{ maxWidth: scale.widthPx + 2 * EDGE, minWidth: MOST_SHRUNK * scale.widthPx }}
        role="img"
        aria-label={words.drawingOf(index, sheet.panels.length, sheet.cuts.length)}
      >
        <defs>
          <pattern id="kept" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0 0V7" />
          </pattern>
        </defs>
        <rect className="sheet" width={scale.widthPx} height={scale.heightPx} />
        {sheet.offcuts.map((area) => (
          <Area
            key={`${area.xMm} ${area.yMm}`}
            kind="offcut"
            box={scale.rect(area)}
            lines={[words.offcut, words.by(area.widthMm, area.heightMm)]}
            says={`${words.offcut} ${words.by(area.widthMm, area.heightMm)}`}
          />
        ))}
        {sheet.panels.map((panel, i) => (
          <PlacedArea
            key={`${panel.xMm} ${panel.yMm}`}
            panel={panel}
            scale={scale}
            sizes={sizes}
            state={states[i] ?? "later"}
          />
        ))}
        {grain && <GrainArrow scale={scale} />}
        {sheet.cuts.map((cut) => {
          const [x1, y1] = scale.point(cut.line[0], cut.line[1]);
          const [x2, y2] = scale.point(cut.line[2], cut.line[3]);
          if (!shown.has(cut.number)) return null;
          return (
            <g key={cut.number} className="this-cut">
              <path d={`M${x1} ${y1}L${x2} ${y2}`} />
              <circle cx={(x1 + x2) / 2} cy={(y1 + y2) / 2} r={11} />
              <text x={(x1 + x2) / 2} y={(y1 + y2) / 2} textAnchor="middle" dominantBaseline="central">
                {cut.number}
              </text>
            </g>
          );
        })}
      </svg>
    </DrawingScroll>
  );
}

function PlacedArea({
  panel,
  scale,
  sizes,
  state,
}: {
  readonly panel: SheetCut["panels"][number];
  readonly scale: SheetScale;
  readonly sizes: Entries<"panelSizes">;
  readonly state: DoneState;
}) {
  const words = useWords().panels;
  const pick = usePick();
  const size = sizes.get(panel.panelId);
  const name = size === undefined ? panel.panelId : pick(size.label, size.labelZh) || panel.panelId;
  // As its own size is given elsewhere, however it lies on the sheet.
  const { widthMm, heightMm } = size ?? panel;
  return (
    <Area
      kind={`panel ${state}`}
      box={scale.rect(panel)}
      lines={[name, words.by(widthMm, heightMm)]}
      says={words.panelSays(name, widthMm, heightMm, panel.copy)}
    />
  );
}

/** A rectangle with as many lines of text as it has room for, upright where that fits better. */
function Area({
  kind,
  box: { x, y, width, height },
  lines,
  says,
}: {
  readonly kind: string;
  readonly box: ReturnType<SheetScale["rect"]>;
  readonly lines: readonly string[];
  readonly says: string;
}) {
  const fits = (long: number, high: number): number => {
    const most = Math.min(lines.length, Math.floor((high - 4) / LINE_PX));
    for (let count = most; count > 0; count--)
      if (lines.slice(0, count).every((line) => widthOf(line) <= long - 8)) return count;
    return 0;
  };
  const across = fits(width, height);
  const upright = fits(height, width);
  const count = Math.max(across, upright);
  const turned = upright > across;
  return (
    <g className={`area ${kind}`}>
      <rect x={x} y={y} width={width} height={height}>
        <title>{says}</title>
      </rect>
      {count > 0 && (
        <text
          transform={`translate(${x + width / 2} ${y + height / 2})${turned ? " rotate(-90)" : ""}`}
          textAnchor="middle"
        >
          {lines.slice(0, count).map((line, i) => (
            <tspan key={line} x={0} y={(i - (count - 1) / 2) * LINE_PX + 4} className={i === 0 ? "name" : ""}>
              {line}
            </tspan>
          ))}
        </text>
      )}
    </g>
  );
}

/** Which way the face grain runs: along the sheet's length. */
function GrainArrow({ scale }: { readonly scale: SheetScale }) {
  return (
    <g className="grain-arrow" transform={`translate(${scale.widthPx - 26} ${scale.heightPx - 14})`}>
      <rect x={-22} y={-10} width={44} height={20} />
      <path d="M-16 0H16M-16 0l5 -4M-16 0l5 4M16 0l-5 -4M16 0l-5 4" />
    </g>
  );
}
