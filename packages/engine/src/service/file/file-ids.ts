import type { FaultFile } from "./fault-file.ts";

/** Id of a joint: of its wire, of its contact's point, or of its element. */
export function fileJointId(file: FaultFile, n: number): string {
  const joint = file.joints[n];
  if (joint === undefined) return "";
  const [kind, , , ref] = joint;
  if (kind === "w") return file.wires[ref]?.id ?? "";
  if (kind === "c") return file.points[ref]?.id ?? "";
  return `${file.items[joint[5]]?.id ?? ""}:${file.elements[ref]?.id ?? ""}`;
}

/** Ids of what a suspect is about. */
export function fileSubjects(file: FaultFile, n: number): readonly string[] {
  const suspect = file.suspects[n];
  if (suspect === undefined) return [];
  const [kind, way, p, q] = suspect;
  switch (way) {
    case "o":
    case "c":
      return [fileJointId(file, p)];
    case "s":
      return [file.nodes[p] ?? "", file.nodes[q] ?? ""];
    case "w":
      return [fileJointId(file, p), fileJointId(file, q)];
    case "d":
      return [file.items[p]?.id ?? ""];
    case "m": {
      const joint = file.joints[p];
      const item = joint?.[0] === "e" ? (file.items[joint[5]]?.id ?? "") : "";
      return kind === "sticks" ? [fileJointId(file, p), item] : [fileJointId(file, p)];
    }
  }
}

/** Id of a suspect: what a session keeps. */
export const fileSuspectId = (file: FaultFile, n: number): string =>
  `${file.suspects[n]?.[0] ?? ""} ${fileSubjects(file, n).join(" ")}`;
