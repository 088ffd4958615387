import type { AskAnswer } from "../../worker/protocol.ts";
import { boardAddress } from "../boards/address.ts";
import { fitAddress } from "../panels/address.ts";
import { partAddress } from "../parts/address.ts";
import { runAddress } from "../runs/address.ts";
import { stepAddress } from "../steps/address.ts";

type Found = AskAnswer<"search">[number];

/** The address of the place where something is looked at. Every id has one, so that it can be sent to others. */
export function addressOf(bookId: string, { kind, id }: Pick<Found, "kind" | "id">): string {
  const asked = encodeURIComponent(id);
  switch (kind) {
    case "item":
    case "panel":
    case "lane":
    case "waypoint":
    case "crossing":
    case "cutout":
      return `/b/${bookId}/layout?id=${asked}`;
    case "net":
    case "wire":
    case "connector":
      return `/b/${bookId}/wiring?id=${asked}`;
    case "harness":
      return `/b/${bookId}/harnesses/${asked}`;
    case "step":
      return stepAddress(bookId, id);
    case "board-type":
      return boardAddress(bookId, id);
    case "fit":
      return fitAddress(bookId, id);
    case "run":
      return runAddress(bookId, id);
    case "part":
      return partAddress(bookId, id);
  }
}
