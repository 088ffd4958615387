import type { HarnessFault } from "@pinwright/engine";
import { useView } from "../../app/book/desk.tsx";
import { useWords } from "../../app/words.tsx";
import { useBench } from "./bench-context.tsx";

/** Says what is wrong with the harness at the bench. */
export function useFaultText(): (fault: HarnessFault) => string {
  const { faults } = useWords().floor.continuity;
  const wires = useView("harnessWires", useBench().type);
  const wire = (id: string): string => wires?.get(id)?.printed ?? id;
  return (fault) => {
    switch (fault.kind) {
      case "missing-wire":
        return faults["missing-wire"](wire(fault.wireId));
      case "open":
        return faults.open(wire(fault.wireId), fault.at);
      case "contact-out":
        return faults["contact-out"](fault.at);
      case "short":
        return faults.short(fault.a, fault.b);
      case "swapped":
        return faults.swapped(fault.a, fault.b);
      case "wrong-cavity":
        return faults["wrong-cavity"](fault.contact, fault.cavity);
    }
  };
}

/** One fault, or two at once. */
export function FaultText({ faults }: { readonly faults: readonly HarnessFault[] }) {
  const { and } = useWords().floor.continuity;
  const textOf = useFaultText();
  return faults.map(textOf).join(and);
}
