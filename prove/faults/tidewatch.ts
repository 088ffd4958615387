import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import { emptyShop } from "../../packages/book/src/index.ts";
import { readBook } from "../../packages/book/src/io/index.ts";
import {
  FaultModel,
  Line,
  machineFunctions,
  type Suspect,
  serviceNetwork,
  suspectsOf,
} from "../../packages/engine/src/index.ts";
import { FaultBench } from "./bench-of-faults.ts";

/** Tidewatch as fault finding sees it; `bench` simulates it, which takes some seconds to set up. */
export async function tidewatchFaults() {
  const folder = fileURLToPath(new URL("../../examples/tidewatch", import.meta.url));
  const { book, shop } = await readBook(folder);
  const line = new Line().run(book, shop ?? emptyShop());
  const { machine } = line;
  const wires = [...line.harnesses.values()].flatMap((harness) => harness.wires);
  const network = serviceNetwork(machine, wires);
  const model = new FaultModel(network, machineFunctions(machine, network));
  const suspects = suspectsOf(machine, network, model.functions, null);
  return {
    line,
    network,
    model,
    suspects,
    suspectOf: new Map<string, Suspect>(suspects.map((one) => [one.id, one])),
    bench: (): FaultBench => new FaultBench(machine, wires, network, model.functions),
    /** Changes with whatever a simulation of the circuit hangs on. */
    hash: createHash("sha256")
      .update(
        JSON.stringify([machine.elements, wires.map(({ id, a, b, finishedMm }) => [id, a, b, finishedMm])]),
      )
      .digest("hex"),
  };
}
