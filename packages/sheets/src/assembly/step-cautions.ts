import type { LineResult, Side, WorkStep } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { wireCautions } from "../cautions.ts";
import { label, say } from "../compose/say.ts";
import { screwGroups, stepFasteners, stepItems, touchesClass } from "./step-facts.ts";
import { takesLocker } from "./step-texts.ts";

type Plain = "inverted" | "solder" | "coil" | "spring" | "glass" | "mains" | "locker" | "driver";

/** What the work of a step can do to a person or to the machine. */
function plainCautions(line: LineResult, step: WorkStep): readonly Plain[] {
  const fasteners = stepFasteners(line, step);
  const ids = new Set(step.itemIds);
  const panels = [step.panelId, ...fasteners.map((f) => f.place.panelId)].flatMap(
    (id) => line.machine.panels.get(id ?? "") ?? [],
  );
  const sides = [
    { panelId: step.panelId ?? "", side: step.side },
    ...fasteners.map((f) => f.place),
    ...stepItems(line, step).map((i) => i.place),
  ];
  const onField = (side: Side): boolean =>
    step.kind !== "bench" &&
    (fasteners.length > 0 ? fasteners.map((f) => f.place) : sides).some(
      (p) => p.side === side && line.machine.panels.get(p.panelId)?.purpose === "playfield",
    );
  const isDriven = step.kind !== "recheck" && fasteners.length > 0;
  const list: readonly (readonly [Plain, boolean])[] = [
    ["inverted", onField("under")],
    ["glass", panels.some((p) => p.purpose === "glass")],
    ["mains", step.harnessId === null && touchesClass(line, ids, "mains")],
    ["coil", step.kind === "bench" || (step.kind === "mount" && touchesClass(line, ids, "coil"))],
    ["spring", step.kind === "bench"],
    ["solder", step.motions.some((m) => m.kind === "solder")],
    ["driver", isDriven && onField("top")],
    ["locker", isDriven && screwGroups(line, fasteners).some(takesLocker)],
  ];
  return list.flatMap(([caution, is]) => (is ? [caution] : []));
}

/**
 * Cautions of a step, each with a line for each language: the designer's own first, then what a lifted panel, glass,
 * mains, coils, solder, the driver and threadlocker can do; of a harness what its own sheets say.
 */
export function stepCautions(line: LineResult, step: WorkStep, language: SheetLanguage): readonly string[] {
  const own = step.cautions.map((labels) => label(language, labels, labels.zh));
  const harness = step.harnessId === null ? undefined : line.harnesses.get(step.harnessId);
  const wires = harness === undefined ? [] : wireCautions(line, harness, language);
  const plain = plainCautions(line, step).map((c) => say(language, (w) => w.steps.caution[c]));
  return [...new Set([...own, ...plain, ...wires])];
}
