import type { ProblemAbout } from "@pinwright/contract";
import type { NamedThing, Thing } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { thingsOf } from "../views/thing.ts";

/** What a problem is written down for, with its name. */
export interface ProblemSubjectFound extends NamedThing {
  readonly about: ProblemAbout;
}

/**
 * What a problem about an id belongs to: a pin's problem is its item's, a wire's that of its harness. Null where nothing
 * that a problem can be about is of this name.
 */
export function problemSubject({ line }: Model, id: string): ProblemSubjectFound | null {
  const things = thingsOf(line);
  const found = things.of(id);
  if (found === null) return null;
  const about = aboutOf(found);
  return about === null ? null : { about, ...things.named(about.id) };
}

function aboutOf({ kind, id, itemKind, of, harnessIds }: Thing): ProblemAbout | null {
  switch (kind) {
    case "item":
    case "type":
      return { kind: itemKind === "board" || itemKind === "mechanism" ? itemKind : "item", id };
    case "harness":
    case "part":
    case "step":
      return { kind, id };
    case "point":
    case "connector":
    case "fuse":
    case "supply":
      return of === null ? null : { kind: "item", id: of.id };
    case "panel":
      return { kind: "item", id };
    case "wire":
    case "net":
    case "lane":
      return harnessIds[0] === undefined ? null : { kind: "harness", id: harnessIds[0] };
    case "test":
      return of === null ? { kind: "machine", id: "machine" } : { kind: "item", id: of.id };
  }
}
