import type { Head } from "./heads.ts";
import type { Tool } from "./tools.ts";

/** What lies between two heights over a face. */
export interface Layer {
  readonly lowMm: number;
  readonly highMm: number;
}

/** A cylinder over a face: what tip or grip takes. */
export interface Cylinder extends Layer {
  readonly radiusMm: number;
}

/** How far a socket goes over a head or stand-off: common practice, no source. */
const SOCKET_OVER_MM = 8;

/**
 * The tip and then the grip of a tool that is set on a head from the end. A bit begins at the top of the head, a
 * socket goes over it, down to what it presses on or as deep as it is.
 */
export function toolRoom(head: Head, tool: Tool): readonly [tip: Cylinder, grip: Cylinder] {
  const overMm = tool.kind === "socket" ? Math.min(head.topMm - head.seatMm, SOCKET_OVER_MM) : 0;
  const lowMm = head.topMm - overMm;
  const gripMm = lowMm + tool.tipLengthMm;
  return [
    { radiusMm: tool.tipDiameterMm / 2, lowMm, highMm: gripMm },
    { radiusMm: tool.gripDiameterMm / 2, lowMm: gripMm, highMm: gripMm + tool.gripLengthMm },
  ];
}

/** The layer in which a spanner lies about a head or nut: from what that presses on to the spanner's thickness. */
export const spannerLayer = (head: Head, tool: Tool): Cylinder => ({
  radiusMm: Math.max(tool.gripLengthMm, tool.tipDiameterMm / 2),
  lowMm: head.seatMm,
  highMm: head.seatMm + tool.tipLengthMm,
});

/** How far from its axis a tool may meet anything, mm. */
export const widestMm = (tool: Tool): number =>
  tool.kind === "spanner"
    ? Math.max(tool.gripLengthMm, tool.tipDiameterMm / 2)
    : Math.max(tool.tipDiameterMm, tool.gripDiameterMm) / 2;
