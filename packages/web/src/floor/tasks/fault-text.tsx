import type { HarnessFault, TestBench } from "@pinwright/engine";
import { useView } from "../../app/book/desk.tsx";
import { useWords } from "../../app/words.tsx";
import { usePlaceText } from "../continuity/places.ts";
import { useBench } from "./bench-context.tsx";

/** Says what is wrong with the harness at the bench, with its places as they are called there. */
export function useFaultText(bench: TestBench): (fault: HarnessFault) => string {
  const { faults } = useWords().floor.continuity;
  const wires = useView("harnessWires", useBench().type);
  const wire = (id: string): string => wires?.get(id)?.printed ?? id;
  const at = usePlaceText(bench);
  return (fault) => {
    switch (fault.kind) {
      case "missing-wire":
        return faults["missing-wire"](wire(fault.wireId));
      case "open":
        return faults.open(wire(fault.wireId), at(fault.at));
      case "contact-out":
        return faults["contact-out"](at(fault.at));
      case "short":
        return faults.short(at(fault.a), at(fault.b));
      case "swapped":
        return faults.swapped(at(fault.a), at(fault.b));
      case "wrong-cavity":
        return faults["wrong-cavity"](at(fault.contact), at(fault.cavity));
    }
  };
}
