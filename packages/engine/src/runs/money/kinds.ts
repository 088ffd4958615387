import type { BookRow } from "@pinwright/book";
import type { CostKind } from "../../model/index.ts";
import type { StageKind } from "../input.ts";

const KINDS: Readonly<Record<BookRow<"parts">["kind"], CostKind>> = {
  electronic: "electronic",
  connector: "electronic",
  contact: "electronic",
  wire: "harness",
  cable: "harness",
  screw: "screws",
  hardware: "screws",
  sheet: "sheet",
  turned: "made-parts",
  "laser-cut": "made-parts",
  moulded: "made-parts",
  wood: "made-parts",
  mechanism: "bought-parts",
  "bought-in": "bought-parts",
  board: "boards",
  consumable: "bought-parts",
};

/** What kind of cost a part is: connectors and contacts belong to the harness or board that they are on. */
export function costKind(
  part: BookRow<"parts"> | undefined,
  stage: StageKind | undefined,
  source: "make" | "have-made" | "buy",
): CostKind {
  if (part === undefined) return "bought-parts";
  if (stage === "harness") return "harness";
  const kind = KINDS[part.kind];
  return kind === "bought-parts" && source !== "buy" ? "made-parts" : kind;
}
