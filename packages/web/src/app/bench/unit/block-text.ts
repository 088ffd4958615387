import type { Block, Gate } from "@pinwright/contract";
import { useDesk, useView } from "../../book/desk.tsx";
import { partAddress } from "../../parts/address.ts";
import { stepAddress } from "../../steps/address.ts";
import { benchAddress, unitAddress } from "../address.ts";
import { useNames } from "../names.tsx";
import { testAddress } from "./unit-readings.tsx";

/** What something that holds a unit is about, in words. */
export function useBlockName(): (block: { readonly gate: Gate; readonly of: string }) => string {
  const names = useNames();
  return ({ gate, of }) => {
    switch (gate) {
      case "step":
        return names.step(of);
      case "test":
        return names.test(of);
      case "fit": {
        // A place, or a part that something else went in for.
        const place = names.place(of);
        return place === of ? names.part(of) : place;
      }
      default:
        return of;
    }
  };
}

/** Where something that holds a unit is looked at; null: it is nowhere in the book. */
export function useBlockAddress(): (block: Pick<Block, "gate" | "of" | "unit">) => string | null {
  const { bookId } = useDesk();
  const steps = useView("stepLines", null);
  const tests = useView("benchTests", null);
  const names = useView("benchNames", null);
  return ({ gate, of, unit }) => {
    switch (gate) {
      case "step":
        return steps?.has(of) === true ? stepAddress(bookId, of) : null;
      case "test": {
        const test = tests?.get(of);
        return test === undefined ? null : testAddress(bookId, test);
      }
      case "fit":
        if (names?.has(`part ${of}`) === true) return partAddress(bookId, of);
        return names?.has(`place ${of}`) === true ? `/b/${bookId}/layout?id=${encodeURIComponent(of)}` : null;
      case "defect":
        return `${unitAddress(bookId, unit)}#defect-${of}`;
      case "recall":
        return benchAddress(bookId, "trace", { recall: of });
    }
  };
}
