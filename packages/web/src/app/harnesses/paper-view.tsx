import { ActionIcon } from "@mantine/core";
import { IconMaximize, IconMinus, IconPlus } from "@tabler/icons-react";
import { type KeyboardEvent, type ReactNode, useEffect, useRef } from "react";
import { useWords } from "../words.tsx";
import { usePanZoom } from "./use-pan-zoom.ts";
import "./paper-view.css";

type KeyAction =
  | { readonly kind: "move"; readonly x: number; readonly y: number }
  | { readonly kind: "zoom"; readonly by: number }
  | { readonly kind: "fit" };

const KEYS: ReadonlyMap<string, KeyAction> = new Map<string, KeyAction>([
  ["ArrowLeft", { kind: "move", x: 1, y: 0 }],
  ["ArrowRight", { kind: "move", x: -1, y: 0 }],
  ["ArrowUp", { kind: "move", x: 0, y: 1 }],
  ["ArrowDown", { kind: "move", x: 0, y: -1 }],
  ["+", { kind: "zoom", by: 1.25 }],
  ["=", { kind: "zoom", by: 1.25 }],
  ["-", { kind: "zoom", by: 0.8 }],
  ["0", { kind: "fit" }],
]);

/** A drawing in millimetres that can be moved about and enlarged by pointer, fingers, wheel and keyboard. */
export function PaperView({
  label,
  widthMm,
  heightMm,
  children,
  tools,
  faint,
  svg,
  anchor = null,
}: {
  readonly label: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** A page as its own SVG; under what `children` draw. */
  readonly svg: string | null;
  /** Whether the page only shows through. */
  readonly faint?: boolean;
  /** Place of the drawing that stays where it is when another drawing comes. */
  readonly anchor?: { readonly x: number; readonly y: number } | null;
  readonly children?: ReactNode;
  readonly tools?: ReactNode;
}) {
  const words = useWords().harnesses.zoom;
  const { frame, group, zoomBy, moveBy, fit } = usePanZoom({ width: widthMm, height: heightMm }, anchor);
  const paper = useRef<SVGGElement>(null);
  useEffect(() => {
    const place = paper.current;
    if (place === null) return;
    if (svg === null) place.replaceChildren();
    else place.replaceChildren(svgElement(svg, widthMm, heightMm));
  }, [svg, widthMm, heightMm]);
  const pressed = (event: KeyboardEvent): void => {
    if (event.target !== event.currentTarget) return;
    const step = event.shiftKey ? 200 : 60;
    const key = KEYS.get(event.key);
    if (key === undefined) return;
    event.preventDefault();
    if (key.kind === "move") moveBy(key.x * step, key.y * step);
    else if (key.kind === "zoom") zoomBy(key.by);
    else fit();
  };
  return (
    <div className="paper-view">
      <div className="paper-tools">
        {tools}
        <span style={{ flex: 1 }} />
        <ActionIcon
          variant="default"
          size="lg"
          aria-label={words.out}
          title={words.out}
          onClick={() => zoomBy(0.8)}
        >
          <IconMinus size={18} />
        </ActionIcon>
        <ActionIcon
          variant="default"
          size="lg"
          aria-label={words.in}
          title={words.in}
          onClick={() => zoomBy(1.25)}
        >
          <IconPlus size={18} />
        </ActionIcon>
        <ActionIcon variant="default" size="lg" aria-label={words.fit} title={words.fit} onClick={fit}>
          <IconMaximize size={18} />
        </ActionIcon>
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing that takes keys is no form control */}
      <div
        className="paper-frame"
        ref={frame}
        role="group"
        aria-label={label}
        aria-description={words.hint}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: arrows move the drawing
        tabIndex={0}
        onKeyDown={pressed}
      >
        <svg>
          <title>{label}</title>
          <g ref={group}>
            <g ref={paper} className="paper" data-faint={faint ? "" : undefined} />
            {children}
          </g>
        </svg>
      </div>
    </div>
  );
}

/** A page of a sheet as an element, one unit a millimetre. Our own composer wrote it; nothing in it can run. */
function svgElement(text: string, widthMm: number, heightMm: number): Node {
  const { documentElement } = new DOMParser().parseFromString(text, "image/svg+xml");
  documentElement.setAttribute("width", String(widthMm));
  documentElement.setAttribute("height", String(heightMm));
  return document.importNode(documentElement, true);
}
