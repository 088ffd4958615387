import { type Finding, type Machine, makeFinding } from "../../model/index.ts";
import { type SwitchMatrix, switchMatrices } from "./find.ts";
import { missingDiodes } from "./ghosts.ts";
import { pinnedElsewhere } from "./propose.ts";

function ghostFindings(matrix: SwitchMatrix): readonly Finding[] {
  return missingDiodes(matrix).map(({ crossing, ghost, closed }) =>
    makeFinding("matrix-ghost", "warning", [crossing.itemId, ghost.itemId, ...closed.map((c) => c.itemId)], {
      closed: closed.length,
      set: closed.map((c) => c.itemId).join(", "),
    }),
  );
}

function reversedFindings(matrix: SwitchMatrix): readonly Finding[] {
  return matrix.crossings.flatMap(({ diode, itemId, column, row }) =>
    diode === "against"
      ? [
          makeFinding("matrix-diode-reversed", "error", [itemId], {
            column: matrix.columns[column]?.id ?? "",
            row: matrix.rows[row]?.id ?? "",
          }),
        ]
      : [],
  );
}

/** Two switches at one crossing cannot be told apart. */
function doubleFindings(matrix: SwitchMatrix): readonly Finding[] {
  const at = new Map<string, string[]>();
  for (const { column, row, itemId } of matrix.crossings) {
    const key = `${matrix.columns[column]?.id} ${matrix.rows[row]?.id}`;
    at.set(key, [...(at.get(key) ?? []), itemId]);
  }
  return [...at].flatMap(([key, items]) => {
    const [column = "", row = ""] = key.split(" ");
    return items.length < 2 ? [] : [makeFinding("matrix-crossing-shared", "warning", items, { column, row })];
  });
}

/**
 * Ghosts, diodes the wrong way round, crossings with several switches and pinned crossings that the nets do not follow,
 * in every switch matrix of the machine.
 */
export function checkMatrices(machine: Machine): readonly Finding[] {
  return switchMatrices(machine).flatMap((matrix) => [
    ...ghostFindings(matrix),
    ...reversedFindings(matrix),
    ...doubleFindings(matrix),
    ...pinnedElsewhere(machine, matrix),
  ]);
}
