import type { MouseEvent, ReactNode } from "react";
import { useFaults } from "../host.ts";

export interface DrawnBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Box of an outline on the screen, where y goes down. */
export function boxOfOutline(outline: readonly number[]): DrawnBox {
  const xs = outline.filter((_, n) => n % 2 === 0);
  const ys = outline.filter((_, n) => n % 2 === 1).map((y) => -y);
  if (xs.length === 0) return { x: 0, y: 0, width: 1, height: 1 };
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x || 1, height: Math.max(...ys) - y || 1 };
}

function path(outline: readonly number[]): string {
  const points: string[] = [];
  for (let n = 0; n + 1 < outline.length; n += 2) points.push(`${outline[n]} ${-(outline[n + 1] ?? 0)}`);
  return points.length === 0 ? "" : `M${points.join("L")}Z`;
}

/** A panel seen from above with the outlines of what is on it. */
export function PanelDrawing({
  panel,
  label,
  onClick,
  children,
}: {
  readonly panel: number;
  readonly label: string;
  readonly onClick?: (event: MouseEvent<SVGSVGElement>) => void;
  readonly children?: ReactNode;
}) {
  const { file } = useFaults();
  const one = file.panels[panel];
  if (one === undefined) return null;
  const box = boxOfOutline(one.outline);
  const margin = 0.02 * Math.max(box.width, box.height);
  const view = `${box.x - margin} ${box.y - margin} ${box.width + 2 * margin} ${box.height + 2 * margin}`;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the list beside it says the same and takes the keyboard
    <svg
      className="ff-panel"
      viewBox={view}
      role="img"
      aria-label={label}
      data-tap={onClick !== undefined}
      onClick={onClick}
    >
      <path className="ff-outline" d={path(one.outline)} />
      {file.items.map(
        (item) => item.panel === panel && <path key={item.id} className="ff-item" d={path(item.outline)} />,
      )}
      {children}
    </svg>
  );
}
