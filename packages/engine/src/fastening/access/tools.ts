import type { BookRow, ShopRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { Machine } from "../../model/index.ts";

/** A tool with the room that it and the hand take. */
export interface Tool {
  /** Its row in the shop's table; null: the shop lists no tools at all, and this one is taken for granted. */
  readonly id: string | null;
  readonly kind: ShopRow<"drivers">["kind"];
  readonly tipDiameterMm: number;
  readonly tipLengthMm: number;
  readonly gripDiameterMm: number;
  readonly gripLengthMm: number;
  readonly swingDeg: number;
}

type ToolShape = Omit<Tool, "id" | "kind" | "swingDeg">;

/** A screwdriver with a clutch and a bit of 50 mm, held in one hand: common practice, no source. */
const BIT: ToolShape = { tipDiameterMm: 7, tipLengthMm: 50, gripDiameterMm: 42, gripLengthMm: 160 };
/** A nut driver's shank behind its socket, whose wall is about 2 mm thick: common practice, no source. */
const SHANK = { tipLengthMm: 60, gripDiameterMm: 42, gripLengthMm: 160 };
const SOCKET_WALL_MM = 2;
/** Across the flats of a hexagon whose size its drive does not tell: common practice, no source. */
const USUAL_FLATS_MM = 7;
/** A combination spanner turns a hexagon by a sixth, its handle is about half as wide as its jaw: from memory. */
const SPANNER_SWING_DEG = 60;

/** A hexagon's width across corners over that across flats. */
const CORNERS = 2 / Math.sqrt(3);

/** Across flats in the text of a drive: `hexagon 7 mm`. */
const flatsOf = (drive: string): number => Number(/(\d+(?:\.\d+)?)/.exec(drive)?.[1] ?? USUAL_FLATS_MM);

/** Whether a drive is a hexagon that a socket goes over. */
const isOuterHexagon = (drive: string): boolean => /^hex/i.test(drive) && !/socket/i.test(drive);

/** The tool that is taken for granted in a shop that lists none. */
function usualTool(drive: string): Tool {
  if (!isOuterHexagon(drive)) return { id: null, kind: "driver", ...BIT, swingDeg: 360 };
  const tipDiameterMm = flatsOf(drive) * CORNERS + 2 * SOCKET_WALL_MM;
  return { id: null, kind: "socket", tipDiameterMm, ...SHANK, swingDeg: 360 };
}

/** The spanner for a nut that is taken for granted in a shop that lists none; sizes as of open spanners, from memory. */
function usualSpanner(drive: string): Tool {
  const flatsMm = flatsOf(drive);
  return {
    id: null,
    kind: "spanner",
    tipDiameterMm: 2.2 * flatsMm,
    tipLengthMm: Math.max(3, 0.5 * flatsMm),
    gripDiameterMm: 1.2 * flatsMm,
    gripLengthMm: 60 + 8 * flatsMm,
    swingDeg: SPANNER_SWING_DEG,
  };
}

function ofRow(row: ShopRow<"drivers">): Tool {
  return {
    id: row.id,
    kind: row.kind,
    tipDiameterMm: row.tip_diameter_mm,
    tipLengthMm: row.tip_length_mm,
    gripDiameterMm: row.grip_diameter_mm,
    gripLengthMm: row.grip_length_mm,
    swingDeg: row.swing_deg,
  };
}

/** Tools turned from the end come before spanners; then the id decides. */
const compareTools = (a: Tool, b: Tool): number =>
  Number(a.kind === "spanner") - Number(b.kind === "spanner") || compareText(a.id ?? "", b.id ?? "");

/** The tools of a shop by what they fit. */
export class ToolBox {
  readonly #listed: boolean;
  readonly #byDrive = new Map<string, readonly Tool[]>();

  constructor(shop: Machine["shop"]) {
    const rows = shop.tables.drivers;
    this.#listed = rows.length > 0;
    for (const drive of new Set(rows.map((row) => row.fits))) {
      const own = rows.filter((row) => row.fits === drive).map(ofRow);
      this.#byDrive.set(drive, own.sort(compareTools));
    }
  }

  /**
   * Tools that drive a fastener, the handiest first; empty when the shop lists tools and none fits. A head without a
   * known drive is reached with what is taken for granted.
   */
  driving(type: BookRow<"fastener_types">): readonly Tool[] {
    return this.#fitting(type.drive, usualTool);
  }

  /** Tools that hold a nut. */
  holding(nut: BookRow<"fastener_types">): readonly Tool[] {
    return this.#fitting(nut.drive, usualSpanner);
  }

  #fitting(drive: string, usual: (drive: string) => Tool): readonly Tool[] {
    if (!this.#listed || drive === "") return [usual(drive)];
    return this.#byDrive.get(drive) ?? [];
  }
}
