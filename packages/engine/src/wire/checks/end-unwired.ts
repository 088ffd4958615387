import { type Finding, makeFinding } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/** `end-unwired`: no wire could be found or placed for an end: no wire type at all, or no room on any contact. */
export function endUnwired({ index, harnesses, wiresAt }: WireFacts): readonly Finding[] {
  return harnesses.flatMap(({ harnessId }) =>
    (index.endsByHarness.get(harnessId) ?? []).flatMap((end) => {
      const own = (wiresAt.get(end.point) ?? []).some(
        (w) => w.harnessId === harnessId && w.netId === end.net,
      );
      const alone = (index.endsByNet.get(end.net) ?? []).every(
        (other) => other.harness !== harnessId || other.point === end.point,
      );
      return own ? [] : [makeFinding("end-unwired", "error", [end.point, end.net, harnessId], { alone })];
    }),
  );
}
